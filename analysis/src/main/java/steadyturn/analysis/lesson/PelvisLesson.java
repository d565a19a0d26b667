package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.TargetLine.Aim;
import steadyturn.analysis.limits.ScaleDoubt;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.attitude.RestBias;
import steadyturn.fusion.displace.Anchor;
import steadyturn.fusion.displace.LessonEstimate;
import steadyturn.fusion.displace.RestAccounts;
import steadyturn.fusion.displace.RestSway;
import steadyturn.fusion.displace.SwingFit;
import steadyturn.fusion.displace.SwingSpan;
import steadyturn.fusion.displace.UnitPriors;
import steadyturn.fusion.rest.Rest;
import steadyturn.fusion.rest.WarmedUp;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.fusion.wear.pelvis.TurnOnSpot;
import steadyturn.fusion.wear.pelvis.TurnStep;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.Player;

/**
 * The pelvis over all swings that share one wearing of the unit: rests, one estimate, one geometry.
 */
@SuppressWarnings("IdentityHashMapUsage") // swings hold long columns: asked for by identity
final class PelvisLesson {

  /** Flag of a swing that the unit's errors and what was taken of its rests do not explain. */
  static final String OFF_THE_LESSON = "off-the-lesson";

  /** So many swings show the unit's errors well enough to judge a drift by (our choice). */
  private static final int ENOUGH = 40;

  /** A slow turn passes for still while it begins and ends: that much is not counted as rest, s. */
  private static final double SLOW_START_S = 0.25;

  private final AnalysisSettings settings;
  private final PelvisSteps steps;
  private final Vector3 bias;
  private final PelvisGeometry worn;
  private final SwingRests.Stance over;
  private final ScaleDoubt scale;
  private final Faults faults;

  private PelvisLesson(
      Player player,
      AnalysisSettings settings,
      PelvisSteps steps,
      ScaleDoubt scale,
      Faults faults) {
    this.scale = scale;
    this.faults = faults;
    this.settings = settings;
    this.steps = steps;
    this.bias = steps.tableBias().orElse(Vector3.ZERO);
    this.worn = steps.geometry(player);
    this.over = SwingRests.Stance.of(worn, player.handed());
  }

  /** What was found of the pelvis in one swing. */
  record PelvisSwing(SwingFit fit, PelvisGeometry geometry, Aim aim, List<String> flags) {}

  /** Estimates of all swings that have a pelvis window, by the swing itself, not its content. */
  static Map<GatheredSwing, PelvisSwing> estimate(
      Player player,
      AnalysisSettings settings,
      List<GatheredSwing> swings,
      ScaleDoubt scale,
      Faults faults) {
    Map<PelvisSteps, List<Known>> wearings = new HashMap<>();
    for (GatheredSwing swing : swings) {
      swing
          .pelvis()
          .rests()
          .map(rests -> new Known(swing, rests))
          .ifPresent(k -> wearings.computeIfAbsent(swing.steps(), s -> new ArrayList<>()).add(k));
    }
    Map<GatheredSwing, PelvisSwing> out = new IdentityHashMap<>();
    wearings.forEach(
        (steps, known) -> {
          PelvisLesson lesson = new PelvisLesson(player, settings, steps, scale, faults);
          String recording = known.get(0).gathered.recording();
          Optional<Map<GatheredSwing, PelvisSwing>> together =
              settings.together()
                  ? faults.keep(recording, 0, () -> lesson.estimate(known))
                  : Optional.empty();
          // one that breaks the common estimate breaks its own only
          together.ifPresentOrElse(
              out::putAll, () -> known.forEach(one -> out.putAll(lesson.alone(one))));
        });
    return out;
  }

  /** A swing and its rests. */
  private record Known(GatheredSwing gathered, SwingRests rests) {

    Swing swing() {
      return gathered.swing();
    }

    Known with(SwingRests others) {
      return new Known(gathered, others);
    }
  }

  private Map<GatheredSwing, PelvisSwing> alone(Known swing) {
    return faults
        .keep(
            swing.gathered.recording(),
            PelvisReading.takeawayS(swing.swing()),
            () -> estimate(List.of(swing)))
        .orElse(Map.of());
  }

  private Map<GatheredSwing, PelvisSwing> estimate(List<Known> found) {
    UnitPriors priors = priors(found);
    LessonEstimate estimate = new LessonEstimate(priors, settings.gravityMps2());
    List<Known> swings = withDriftsNamed(estimate.rough(), found);
    List<SwingSpan> spans = new ArrayList<>();
    swings.forEach(known -> spans.add(known.rests.span()));
    Optional<SwingSpan> turn = steps.turnOnSpot().map(PelvisLesson::span);
    turn.ifPresent(spans::add);
    List<SwingFit> fit = estimate.fit(spans, bias);
    Optional<PelvisGeometry> turned =
        turn.flatMap(span -> TurnOnSpot.fold(worn, fit.get(spans.size() - 1).motion()));
    PelvisGeometry geometry = turned.orElse(worn);
    boolean strayed = turn.isPresent() && turned.isEmpty();
    List<Aim> aims =
        new TargetLine(settings.aimSdRad(), priors.gyroMatrix())
            .of(swings.stream().map(k -> k.gathered.aim()).toList(), geometry.qUnitPelvis());
    Map<GatheredSwing, PelvisSwing> out = new IdentityHashMap<>();
    for (int i = 0; i < swings.size(); i++) {
      out.put(
          swings.get(i).gathered,
          new PelvisSwing(
              fit.get(i), geometry, aims.get(i), flags(swings.get(i).rests, fit.get(i), strayed)));
    }
    return out;
  }

  private static List<String> flags(SwingRests rests, SwingFit fit, boolean strayed) {
    List<String> flags = new ArrayList<>(rests.flags());
    if (strayed) {
      flags.add("turn-on-spot-strayed");
    }
    if (!fit.taught() || fit.contradictsItself()) {
      flags.add(OFF_THE_LESSON);
    }
    return flags;
  }

  private UnitPriors priors(List<Known> found) {
    boolean calibrated = found.get(0).rests.span().stream().facts().calibrated();
    List<RestBias.Quiet> around = found.stream().map(k -> k.gathered.pelvis().quiet()).toList();
    UnitPriors priors =
        (calibrated ? UnitPriors.calibrated() : UnitPriors.raw())
            .withScale(scale.part())
            .withBiasDrift(WarmedUp.amongRadPerS(around));
    List<Vector3> rates =
        found.stream().flatMap(k -> k.gathered.pelvis().addressRateRadPerS().stream()).toList();
    double atTable = Math.toRadians(calibrated ? 0.03 : 0.08);
    return steps
        .tableBias()
        .map(
            b -> {
              double movedRadPerS =
                  Math.max(WarmedUp.byRadPerS(rates, b), WarmedUp.sinceRadPerS(around, b));
              return priors.withGyroBias(Math.hypot(atTable, movedRadPerS));
            })
        .orElse(priors);
  }

  /**
   * An accelerometer cannot tell a still address from one that drifts at constant speed; the
   * finish, the other swings and the feet can. Nor can it tell a held finish from one that moves on
   * at constant speed.
   */
  private List<Known> withDriftsNamed(LessonEstimate estimate, List<Known> found) {
    List<SwingRests> witnessed =
        found.parallelStream().map(k -> k.rests.witnessed(k.swing(), over.eitherWay())).toList();
    List<SwingFit> asStill = fit(estimate, witnessed.stream().map(SwingRests::rising));
    RestSway sway = sway(asStill);
    List<Known> swings = found.stream().map(k -> k.with(k.rests.swaying(sway))).toList();
    List<Integer> looked = lookedAt(asStill);
    if (looked.isEmpty()) {
      return IntStream.range(0, swings.size())
          .mapToObj(
              i ->
                  isDrifting(swings, i)
                      ? swings.get(i).with(wide(swings.get(i), sway).asDrifting())
                      : swings.get(i))
          .toList();
    }
    List<SwingFit> asMoving =
        fit(estimate, looked.stream().map(i -> witnessed.get(i).asDrifting().span()));
    List<SwingFit> asUnheld =
        fit(estimate, looked.stream().map(i -> witnessed.get(i).asUnheld().rising()));
    List<RestAccounts> accounts = new ArrayList<>();
    for (int i = 0; i < swings.size(); i++) {
      int at = looked.indexOf(i);
      double still = asStill.get(i).cost();
      double moving = at < 0 ? still : asMoving.get(at).cost();
      double unheld = at < 0 ? still : asUnheld.get(at).cost();
      accounts.add(RestAccounts.of(still, moving, unheld, asStill.get(i).sway()));
    }
    boolean habit = RestAccounts.areOfDrifting(accounts);
    return IntStream.range(0, swings.size())
        .mapToObj(
            i ->
                blamed(
                    swings.get(i),
                    sway,
                    accounts.get(i),
                    isDrifting(swings, i) || (habit && accounts.get(i).mayDrift())))
        .toList();
  }

  /** How the player sways at address: one person, so the middle of all swings. */
  private static RestSway sway(List<SwingFit> asStill) {
    List<RestSway> seen = asStill.stream().flatMap(f -> f.sway().stream()).toList();
    return seen.isEmpty()
        ? new RestSway(0, 0, 0)
        : new RestSway(
            Averages.median(seen.stream().mapToDouble(RestSway::levelMps).toArray()),
            Averages.median(seen.stream().mapToDouble(RestSway::upMps).toArray()),
            Averages.median(seen.stream().mapToDouble(RestSway::lastingMps).toArray()));
  }

  private static boolean isDrifting(List<Known> swings, int i) {
    return swings.get(i).rests.flags().contains(SwingRests.ADDRESS_NOT_STILL);
  }

  private List<SwingFit> fit(LessonEstimate estimate, Stream<SwingSpan> spans) {
    return estimate.fit(spans.toList(), bias);
  }

  /**
   * The account of a swing that explains it much better than two rests do; both, where neither
   * explains it far better than the other.
   */
  private Known blamed(Known known, RestSway sway, RestAccounts of, boolean drifts) {
    boolean strays = drifts || of.drifts();
    if (!of.movesOn() && !strays) {
      return known;
    }
    SwingRests witnessed = wide(known, sway);
    SwingRests rests = of.movesOn() ? witnessed.asUnheld() : witnessed;
    return known.with(strays ? rests.asDrifting() : rests);
  }

  /** The rests with all their witnesses, the feet among them. */
  private SwingRests wide(Known known, RestSway sway) {
    return known.rests.witnessed(known.swing(), over).swaying(sway);
  }

  /**
   * Swings that cost enough to gain by a drift, filled up by others to so many as show the unit's
   * errors; none where none costs enough.
   */
  private static List<Integer> lookedAt(List<SwingFit> asStill) {
    Predicate<Integer> mayGain = i -> asStill.get(i).cost() > RestAccounts.EVIDENCE;
    List<Integer> all = IntStream.range(0, asStill.size()).boxed().toList();
    long doubtful = all.stream().filter(mayGain).count();
    Stream<Integer> others = all.stream().filter(mayGain.negate());
    return doubtful == 0
        ? List.of()
        : Stream.concat(all.stream().filter(mayGain), others.limit(Math.max(0, ENOUGH - doubtful)))
            .sorted()
            .toList();
  }

  /** The turn on the spot between the two rests around it. */
  private static SwingSpan span(TurnStep turn) {
    Rest before = turn.before().orElseThrow();
    Rest after = turn.after().orElseThrow();
    return SwingSpan.of(
        turn.samples(),
        before.startS() - 0.01,
        after.endS() + 0.01,
        List.of(
            Anchor.address(before.startS(), before.endS() - SLOW_START_S),
            Anchor.address(after.startS() + SLOW_START_S, after.endS())),
        List.of());
  }
}
