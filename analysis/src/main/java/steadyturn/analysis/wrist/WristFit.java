package steadyturn.analysis.wrist;

import java.util.Optional;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.HandOnShaft;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * From the streams of one swing to the joint: forearm and hand, or forearm and club shaft where the
 * hand unit is missing; where all three are there, the shaft watches the hand.
 */
final class WristFit {

  private static final double BEFORE_TAKEAWAY_S = 1.2;
  private static final double AFTER_IMPACT_S = 1.6;
  // the arm begins to move a tenth of a second before the takeaway, and its push would tilt the
  // level
  private static final double LEVEL_FROM_S = 0.75;
  private static final double LEVEL_TO_S = 0.12;
  private static final double BEFORE_BLOW_S = 0.004;
  private static final int FEWEST_SAMPLES = 50;
  // parts of what is needed, and what both units must show together: our choice
  private static final double LOST_LEVEL = 0.6;
  private static final double LOST_ADDRESS = 0.5;
  private static final double LEAST_SEEN_S = 0.25;
  private static final double LOOK_STEP_S = 0.01;
  // how long a swing goes on after the ball where no finish was held: our assumption
  private static final double FOLLOW_THROUGH_S = 0.7;

  private final Recording recording;
  private final RestBiases biases;
  private final SkinSlip skin;
  private final double fromS;
  private final double toS;

  private WristFit(Recording recording, RestBiases biases, Swing swing, SkinSlip skin) {
    this.recording = recording;
    this.biases = biases;
    this.skin = skin;
    this.fromS = Math.max(swing.startS(), skin.takeawayS() - BEFORE_TAKEAWAY_S);
    this.toS = Math.min(swing.endS(), skin.impactS() + AFTER_IMPACT_S);
  }

  /** One unit's stretch, repaired and integrated. */
  record Arm(PeakRepair.Repaired repaired, LevelTrack track) {}

  static Optional<WristMotion> of(
      Recording recording, RestBiases biases, Swing swing, WristSteps worn, WristClocks clocks) {
    Optional<Double> takeaway = swing.timeS(SwingEvent.TAKEAWAY);
    Optional<Double> top = swing.timeS(SwingEvent.TOP);
    Optional<Double> impact = swing.timeS(SwingEvent.IMPACT);
    if (takeaway.isEmpty() || top.isEmpty() || impact.isEmpty()) {
      return Optional.empty();
    }
    double finishS = swing.timeS(SwingEvent.FINISH).orElse(impact.get() + FOLLOW_THROUGH_S);
    SkinSlip skin = new SkinSlip(takeaway.get(), top.get(), impact.get(), finishS);
    return new WristFit(recording, biases, swing, skin).fit(worn, clocks);
  }

  private Optional<WristMotion> fit(WristSteps worn, WristClocks clocks) {
    Optional<Arm> forearm = arm(BodyPoint.LEAD_FOREARM);
    Optional<Arm> hand =
        arm(BodyPoint.LEAD_HAND)
            .map(h -> forearm.map(f -> throughCuts(f, h, worn.alignment(), clocks)).orElse(h));
    Optional<Arm> shaft = arm(BodyPoint.CLUB_SHAFT);
    if (forearm.isEmpty()) {
      return Optional.empty();
    }
    if (hand.isPresent()) {
      if (!seenTogether(forearm.get(), hand.get())) {
        return Optional.empty();
      }
      Optional<HandOnShaft> watch =
          shaft.map(
              s ->
                  new HandOnShaft(
                      hand.get().track(),
                      s.track(),
                      worn.alignment().hand(),
                      skin.takeawayS() - LEVEL_TO_S,
                      lastSeenS(hand.get(), s),
                      clocks.handShaftSdS()));
      return Optional.of(
          motion(forearm.get(), hand.get(), worn.alignment(), clocks.handSdS(), watch));
    }
    return shaft
        .filter(s -> seenTogether(forearm.get(), s))
        .map(s -> motion(forearm.get(), s, worn.shaft(), clocks.shaftSdS(), Optional.empty()));
  }

  /** Up to the blow, or to the first rate that was cut beyond repair. */
  private double lastSeenS(Arm hand, Arm shaft) {
    double cutS = Math.min(hand.repaired().beyondFromS(), shaft.repaired().beyondFromS());
    return Math.min(skin.impactS() - BEFORE_BLOW_S, cutS);
  }

  private Optional<Arm> arm(BodyPoint point) {
    return recording
        .unit(point)
        .map(unit -> unit.between(fromS, toS))
        .filter(stretch -> stretch.size() >= FEWEST_SAMPLES)
        .filter(this::showsEnough)
        .map(this::arm);
  }

  /** Of the moment that levels it, of the address that angles count from, and of the swing. */
  private boolean showsEnough(UnitStream stretch) {
    Gaps all = Gaps.of(stretch, Gaps.Need.BOTH);
    Gaps rates = Gaps.of(stretch, Gaps.Need.RATE);
    double fromS = skin.takeawayS() - WristMotion.REFERENCE_FROM_S;
    double levelFromS = Math.max(stretch.timeS(0), skin.takeawayS() - LEVEL_FROM_S);
    return all.lostPart(levelFromS, skin.takeawayS() - LEVEL_TO_S) < LOST_LEVEL
        && rates.lostPart(fromS, skin.takeawayS()) < LOST_ADDRESS;
  }

  /** Whether both units were seen at once for long enough to show how they lie to each other. */
  private boolean seenTogether(Arm forearm, Arm other) {
    double seenS = 0;
    for (double t = skin.takeawayS() - WristMotion.REFERENCE_FROM_S; t < skin.impactS(); ) {
      seenS += forearm.track().isSeen(t) && other.track().isSeen(t) ? LOOK_STEP_S : 0;
      t += LOOK_STEP_S;
    }
    return seenS >= LEAST_SEEN_S;
  }

  private Arm throughCuts(Arm forearm, Arm hand, WristAlignment alignment, WristClocks clocks) {
    WristGaps gaps = WristGaps.of(forearm.repaired(), hand.repaired(), skin.takeawayS());
    if (forearm.repaired().beyondBefore(skin.impactS())
        || gaps.touch(skin.takeawayS(), skin.impactS())) {
      return hand;
    }
    CutRates rates =
        new CutRates(
            forearm.repaired().stream(),
            forearm.track(),
            biases.radPerS(BodyPoint.LEAD_FOREARM),
            biases.radPerS(BodyPoint.LEAD_HAND),
            alignment,
            skin,
            clocks.handSdS());
    PeakRepair.Repaired filled = rates.filled(hand.repaired(), hand.track());
    return filled.equals(hand.repaired()) ? hand : arm(filled);
  }

  private Arm arm(UnitStream stretch) {
    return arm(PeakRepair.repair(stretch));
  }

  private Arm arm(PeakRepair.Repaired repaired) {
    UnitStream stretch = repaired.stream();
    return new Arm(
        repaired,
        LevelTrack.of(
            repaired,
            biases.radPerS(stretch.point()),
            LevelTrack.Spreads.of(stretch),
            skin.takeawayS() - LEVEL_FROM_S,
            skin.takeawayS() - LEVEL_TO_S));
  }

  private WristMotion motion(
      Arm forearm,
      Arm other,
      WristAlignment alignment,
      double syncSdS,
      Optional<HandOnShaft> watch) {
    TwoAxisJoint joint =
        TwoAxisJoint.fit(
            forearm.track(),
            other.track(),
            alignment,
            skin,
            skin.takeawayS() - WristMotion.REFERENCE_FROM_S,
            skin.impactS() - BEFORE_BLOW_S,
            syncSdS);
    return new WristMotion(
        joint,
        recording.player().handed().sign(),
        skin,
        new WristMotion.Source(
            other.repaired().stream().point(),
            alignment.posed(),
            syncSdS,
            forearm.repaired(),
            other.repaired(),
            WristGaps.of(
                forearm.repaired(),
                other.repaired(),
                skin.takeawayS() - WristMotion.REFERENCE_FROM_S),
            watch.filter(HandOnShaft::disagree)));
  }
}
