package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.displace.Anchor;
import steadyturn.fusion.displace.EarlierRest;
import steadyturn.fusion.displace.RestSway;
import steadyturn.fusion.displace.StanceBound;
import steadyturn.fusion.displace.SwingSpan;
import steadyturn.fusion.rest.Rest;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rest.RestSettings;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the rests at both ends of a swing and says how well they hold.
 *
 * @param span samples and anchors for the estimate; its stream reaches back to the earlier rest
 * @param earlier a rest before the one at address, where there is one: from it the speed at address
 *     can be told
 * @param flags {@code address-short}, {@code address-not-still}, {@code finish-not-held}, {@code
 *     finish-not-seen}, {@code pelvis-gap}
 */
record SwingRests(SwingSpan span, Optional<Anchor> earlier, List<String> flags) {

  static final String ADDRESS_SHORT = "address-short";
  static final String ADDRESS_NOT_STILL = "address-not-still";
  static final String FINISH_NOT_HELD = "finish-not-held";
  static final String FINISH_NOT_SEEN = "finish-not-seen";
  static final String PELVIS_GAP = "pelvis-gap";

  /** A drifting body moves at a speed of this spread (our assumption), m/s. */
  private static final double DRIFT_SD_MPS = 0.10;

  /**
   * Where the address tells nothing of the speed, nothing checks the finish either: a body that
   * looks still there may yet move on at this (our choice), m/s.
   */
  private static final double ALONE_SD_MPS = 0.02;

  /** Mid-hip stays within this of where it is expected (our assumption: one goes 0.2 m back), m. */
  private static final double STANCE_SD_M = 0.12;

  /**
   * By impact the pelvis has gone 5 to 12 cm towards the target, and on over the lead foot by the
   * finish (common practice, no source).
   */
  private static final double AT_IMPACT_M = 0.07;

  private static final double AT_FINISH_M = 0.11;

  private static final double SHORT_ADDRESS_S = 0.3;

  /** A shorter stop may be one between two movements, at any speed (our choice), s. */
  private static final double HELD_S = 0.6;

  /** The pelvis may start before the arm: the last of the address is not counted as rest, s. */
  private static final double BEFORE_TAKEAWAY_S = 0.03;

  /** A body passes for still while it slowly comes to rest: that first part is not counted, s. */
  private static final double SETTLING_S = 0.3;

  /** The same at address, where the player has been quiet for longer, s. */
  private static final double ADDRESS_SETTLING_S = 0.1;

  /**
   * Hips set off up to a tenth of a second before the arm, and are well under way when their
   * turning shows: in two swings that cameras saw (CMU Graphics Lab Motion Capture Database,
   * subject 63) they lead by 60 to 80 ms.
   */
  private static final double LEAVING_S = 0.1;

  /** But so much of a still address is always kept, s. */
  private static final double KEPT_ADDRESS_S = 0.7;

  /** So much more than the anchors is taken into a span, s. */
  private static final double BESIDE_S = 0.01;

  SwingRests {
    flags = List.copyOf(flags);
  }

  /**
   * A pelvis over feet that stay where they are.
   *
   * @param leverArmUnitM mid-hip relative to the unit, unit axes, m
   * @param targetUnit direction of the target at address, unit axes
   */
  record Stance(Vector3 leverArmUnitM, Vector3 targetUnit) {

    static Stance of(PelvisGeometry geometry, Handedness handed) {
      return new Stance(
          geometry.leverArmUnitM(), geometry.qUnitPelvis().rotate(Vector3.Y).times(handed.sign()));
    }

    /** The same where it is not asked which way the player goes. */
    Stance eitherWay() {
      return new Stance(leverArmUnitM, Vector3.ZERO);
    }

    private StanceBound bound(double fromS, double timeS, double expectedM, double sdM) {
      return new StanceBound(fromS, timeS, leverArmUnitM, targetUnit.times(expectedM), sdM);
    }
  }

  static SwingRests of(Swing swing, SeenPart seen, Vector3 bias, Stance over) {
    UnitStream window = seen.window();
    double takeawayS = swing.timeS(SwingEvent.TAKEAWAY).orElse(swing.startS() + 0.5);
    double impactS = swing.timeS(SwingEvent.IMPACT).orElse(swing.endS() - 0.5);
    List<String> flags = new ArrayList<>();
    if (seen.isCut() || seen.hasGap()) {
      flags.add(PELVIS_GAP);
    }
    List<Anchor> anchors = new ArrayList<>();
    anchors.add(address(window, bias, takeawayS, flags));
    List<StanceBound> stance = new ArrayList<>();
    Optional<Rest> finish =
        new RestGate(RestSettings.finish().atLeast(HELD_S))
            .after(window, bias, impactS + 0.25, last(window))
            .map(rest -> RestGate.core(window, bias, rest, SETTLING_S + HELD_S));
    double endS;
    if (finish.isPresent()) {
      endS = finish.get().endS();
      double settlingS = finish.get().lengthS() < SETTLING_S + HELD_S ? 0 : SETTLING_S;
      anchors.add(Anchor.finish(finish.get().startS() + settlingS, endS));
    } else {
      endS = withoutFinish(seen, impactS, over, anchors, stance, flags);
    }
    if (flags.contains(ADDRESS_NOT_STILL)) {
      stance.addAll(bounds(takeawayS, impactS, endS, over));
      leanOnFinish(anchors);
    }
    double addressS = anchors.get(0).startS();
    Optional<Anchor> earlier = EarlierRest.before(window, bias, addressS);
    double fromS = Math.min(addressS, earlier.map(Anchor::startS).orElse(addressS));
    UnitStream needed = window.between(fromS - BESIDE_S, endS + BESIDE_S);
    return new SwingRests(
        SwingSpan.of(needed, addressS - BESIDE_S, endS + BESIDE_S, anchors, stance),
        earlier,
        flags);
  }

  /**
   * Where no finish was held, its quietest moment is a soft end; where it was not seen, only the
   * feet, which stay where they are. Answers the end of the span, s.
   */
  private static double withoutFinish(
      SeenPart seen,
      double impactS,
      Stance over,
      List<Anchor> anchors,
      List<StanceBound> stance,
      List<String> flags) {
    UnitStream window = seen.window();
    double addressS = anchors.get(0).endS();
    double lastS = last(window);
    Optional<Double> quietS = quietest(window, impactS + 0.4, Math.min(lastS, impactS + 1.6));
    flags.add(seen.isCut() ? FINISH_NOT_SEEN : FINISH_NOT_HELD);
    if (quietS.isPresent()) {
      double atS = quietS.get();
      anchors.add(moving(atS - 0.05, atS + 0.05));
      stance.add(over.bound(addressS, atS, AT_FINISH_M, 2 * STANCE_SD_M));
      return atS + 0.06;
    }
    if (lastS > addressS) {
      stance.add(over.bound(addressS, (addressS + lastS) / 2, 0, 2 * STANCE_SD_M));
      stance.add(over.bound(addressS, lastS, 0, 2 * STANCE_SD_M));
    }
    return lastS;
  }

  private static Anchor address(
      UnitStream window, Vector3 bias, double takeawayS, List<String> flags) {
    double untilS = takeawayS - BEFORE_TAKEAWAY_S;
    Optional<Rest> rest =
        new RestGate(RestSettings.address()).before(window, bias, window.timeS(0), untilS);
    if (rest.isPresent() && rest.get().endS() > untilS - 0.3) {
      Rest still = RestGate.settled(window, bias, rest.get());
      double spareS = Math.max(0, still.lengthS() - KEPT_ADDRESS_S);
      double leavingS = Math.min(LEAVING_S, spareS);
      double settlingS = Math.min(ADDRESS_SETTLING_S, spareS - leavingS);
      return Anchor.address(still.startS() + settlingS, still.endS() - leavingS);
    }
    Optional<Rest> shorter =
        new RestGate(RestSettings.address().atLeast(SHORT_ADDRESS_S))
            .before(window, bias, window.timeS(0), untilS);
    if (shorter.isPresent() && shorter.get().endS() > untilS - 0.3) {
      flags.add(ADDRESS_SHORT);
      return new Anchor(
          shorter.get().startS(), shorter.get().endS(), 0.015, Math.toRadians(1.5), 0);
    }
    flags.add(ADDRESS_NOT_STILL);
    double fromS = Math.max(window.timeS(0) + 0.01, untilS - 0.4);
    return new Anchor(fromS, Math.max(fromS + 0.1, untilS), 0.03, Math.toRadians(4), DRIFT_SD_MPS);
  }

  /** The same on a body that sways at least so fast in every rest. */
  SwingRests swaying(RestSway least) {
    List<Anchor> anchors = span.anchors().stream().map(a -> a.swaying(least)).toList();
    return new SwingRests(
        span.with(anchors, span.stance()), earlier.map(a -> a.swaying(least)), flags);
  }

  /** A swing with its witnesses, taken to drift at constant speed through its address. */
  SwingRests asDrifting() {
    List<Anchor> anchors = new ArrayList<>(span.anchors());
    int address = earlier.isPresent() ? 1 : 0;
    anchors.set(address, anchors.get(address).drifting(DRIFT_SD_MPS));
    leanOnFinish(anchors);
    List<String> more = new ArrayList<>(flags);
    if (!more.contains(ADDRESS_NOT_STILL)) {
      more.add(ADDRESS_NOT_STILL);
    }
    return new SwingRests(span.with(anchors, span.stance()), earlier, more);
  }

  /** The finish alone is to say what the speed is: it may be another than it looks. */
  private static void leanOnFinish(List<Anchor> anchors) {
    anchors.set(anchors.size() - 1, anchors.get(anchors.size() - 1).strayingBy(ALONE_SD_MPS));
  }

  /** A swing with its witnesses, taken to move on through what looked like a held finish. */
  SwingRests asUnheld() {
    if (flags.contains(FINISH_NOT_HELD) || flags.contains(FINISH_NOT_SEEN)) {
      return this;
    }
    List<Anchor> anchors = new ArrayList<>(span.anchors());
    Anchor finish = anchors.remove(anchors.size() - 1);
    anchors.add(moving(finish.startS(), finish.endS()));
    List<String> more = new ArrayList<>(flags);
    more.add(FINISH_NOT_HELD);
    return new SwingRests(span.with(anchors, span.stance()), earlier, more);
  }

  private static Anchor moving(double startS, double endS) {
    return new Anchor(startS, endS, 0.10, Math.toRadians(60), 0);
  }

  /** The span of a body that sinks at address, which says nothing of a drift along the ground. */
  SwingSpan rising() {
    return span.with(span.anchors().stream().map(Anchor::risingToo).toList(), span.stance());
  }

  /** The same swing with all that can witness against a drifting address: feet, earlier rest. */
  SwingRests witnessed(Swing swing, Stance over) {
    List<StanceBound> stance = bounds(swing, over);
    if (earlier.isEmpty()) {
      return new SwingRests(span.with(span.anchors(), stance), earlier, flags);
    }
    List<Anchor> anchors = new ArrayList<>();
    anchors.add(earlier.get());
    anchors.addAll(span.anchors());
    double endS = anchors.get(anchors.size() - 1).endS();
    double fromS = earlier.get().startS() - BESIDE_S;
    SwingSpan longer = SwingSpan.of(span.stream(), fromS, endS + BESIDE_S, anchors, stance);
    return new SwingRests(longer, earlier, flags);
  }

  private List<StanceBound> bounds(Swing swing, Stance over) {
    double endS = span.anchors().get(span.anchors().size() - 1).endS();
    return bounds(
        swing.timeS(SwingEvent.TAKEAWAY).orElse(swing.startS()),
        swing.timeS(SwingEvent.IMPACT).orElse(swing.endS()),
        endS,
        over);
  }

  private static List<StanceBound> bounds(
      double takeawayS, double impactS, double endS, Stance over) {
    return List.of(
        over.bound(takeawayS, (takeawayS + impactS) / 2, 0, STANCE_SD_M),
        over.bound(takeawayS, impactS, AT_IMPACT_M, 1.5 * STANCE_SD_M),
        over.bound(takeawayS, endS - 0.02, AT_FINISH_M, 2 * STANCE_SD_M));
  }

  /** Middle of the tenth of a second in which the unit turned least; none where none was seen. */
  private static Optional<Double> quietest(UnitStream window, double fromS, double toS) {
    Optional<Double> bestS = Optional.empty();
    double best = Double.POSITIVE_INFINITY;
    for (double t = fromS; t <= toS - 0.1; t += 0.02) {
      double rms = RestGate.rateRmsRadPerS(window, Vector3.ZERO, t, t + 0.1);
      if (rms < best && RestGate.isSeen(window, t, t + 0.1)) {
        best = rms;
        bestS = Optional.of(t + 0.05);
      }
    }
    return bestS;
  }

  private static double last(UnitStream window) {
    return window.timeS(window.size() - 1);
  }
}
