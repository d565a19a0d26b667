package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Reads the key positions of one stroke that an arm unit shows. */
final class ArmSwingReader {

  private static final double REFERENCE_S = 0.14;
  // the wrist begins to cock a little after the arm moves: our assumption
  private static final double HAND_TAKEAWAY_SD_S = 0.005;
  // the hands may lead or lag by 8 deg at a ball that is not there, at 600 deg/s: our assumption
  private static final double VIRTUAL_SD_S = 0.013;
  // what is not the arm's own movement, in its plane: sway about other axes, gyro bias, slipping
  // skin;
  // the arm's own trembling belongs to the movement that is timed. Our assumption
  private static final double TOP_LEAK_RAD_PER_S = Math.toRadians(0.6);
  // the takeaway is read from the rates of 8 and 25 deg/s, averaged over 30 ms
  private static final double TAKEAWAY_BEFORE_S = 0.02;
  private static final double TAKEAWAY_AFTER_S = 0.1;
  private static final double FEEL_RAD_PER_S = Math.toRadians(10);
  private static final double SMOOTH_S = 0.008;
  private static final double ADDRESS_S = 0.75;
  private static final double AFTER_IMPACT_S = 0.1;
  private static final Set<BodyPoint> ARM = EnumSet.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
  private static final double FINISH_WITHIN_S = 4;

  private final Recording recording;
  private final RestBiases biases;
  private final WristAlignment alignment;
  private final Optional<ArmMotion> forearm;
  private final Optional<ArmMotion> hand;
  private final Optional<ArmHeight> height;
  private final ArmMotion arm;
  private final WornUnit armUnit;
  private final Map<SwingEvent, EventTime> events = new EnumMap<>(SwingEvent.class);
  private final List<String> flags = new ArrayList<>();

  ArmSwingReader(
      Recording recording,
      RestBiases biases,
      WristAlignment alignment,
      FinderSettings settings,
      Optional<WornUnit> forearmUnit,
      Optional<WornUnit> handUnit,
      ArmMotion arm,
      boolean byHand) {
    this.recording = recording;
    this.biases = biases;
    this.alignment = alignment;
    this.arm = arm;
    double peakS = arm.timeS(arm.shape().peak());
    if (!byHand) {
      this.armUnit = forearmUnit.orElseThrow();
      this.height = Optional.of(ArmHeight.of(arm));
      this.forearm = Optional.of(arm);
      this.hand = handUnit.flatMap(u -> u.around(peakS, settings)).filter(ArmMotion::isReadable);
    } else {
      this.armUnit = handUnit.orElseThrow();
      this.height = forearmUnit.flatMap(u -> ArmHeight.beside(u, arm));
      this.forearm = Optional.empty();
      this.hand = Optional.of(arm);
    }
  }

  /** The swing with all events that can be found. */
  FoundSwing read() {
    StrokeShape shape = arm.shape();
    double topS = readBack(shape);
    ArmBlow blow = new ArmBlow(recording, biases, forearm, hand, impactSpan());
    Optional<Instant> clear = blow.clear();
    Instant back = virtualImpact();
    Optional<Instant> shock = clear.or(() -> blow.weak(back));
    Instant impact = shock.orElse(back);
    EventReason why = shock.isPresent() ? EventReason.WEAK_BLOW : EventReason.VIRTUAL;
    put(SwingEvent.IMPACT, impact, clear.isPresent() ? Reason.NONE : Reason.of(why));
    Span down = new Span(topS, impact.timeS());
    readDown(down);
    readPelvis(down);
    Optional<Instant> finish = readFinish(impact.timeS());
    noteGaps(impact.timeS());
    return new FoundSwing(
        armUnit.stream(),
        List.copyOf(events.values()),
        shock.isPresent(),
        shape.takeawayS(),
        impact.timeS(),
        finish.map(Instant::timeS).orElse(impact.timeS() + 1.5),
        flags);
  }

  /** Address to top; answers when the top was, s. */
  private double readBack(StrokeShape shape) {
    boolean hands = forearm.isPresent();
    double takeawaySd = Math.hypot(shape.takeawaySdS(), hands ? 0 : HAND_TAKEAWAY_SD_S);
    Reason takeawayWhy = hands ? Reason.NONE : Reason.of(EventReason.FROM_HAND);
    double turnedSd = arm.gaps().turnSdRad(shape.takeawayS(), arm.timeS(shape.peak()));
    double tilted = FEEL_RAD_PER_S * turnedSd / shape.takeawaySlope();
    GapDoubt.Moment takeaway =
        arm.gaps()
            .moment(
                new Instant(shape.takeawayS(), Math.hypot(takeawaySd, tilted)),
                TAKEAWAY_BEFORE_S,
                TAKEAWAY_AFTER_S);
    double addressS = takeaway.at().timeS() - REFERENCE_S;
    put(SwingEvent.ADDRESS, new Instant(addressS, takeaway.at().sdS()), takeaway, takeawayWhy);
    put(SwingEvent.TAKEAWAY, takeaway.at(), takeaway, takeawayWhy);
    Instant top = new Instant(shape.topS(), Math.hypot(topLeakS(shape), hands ? 0.0002 : 0.02));
    GapDoubt.Moment atTop = arm.gaps().moment(top, SMOOTH_S, SMOOTH_S);
    put(
        SwingEvent.TOP,
        atTop.at(),
        atTop,
        hands ? Reason.NONE : Reason.of(EventReason.TOP_FROM_HAND));
    double alignmentSd = alignment.longAxisSdRad();
    double fromS = arm.timeS(shape.takeaway());
    height.ifPresent(
        h ->
            h.levelUp(fromS, arm.timeS(shape.top()), alignmentSd)
                .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_BACK, h.gaps(), i, Reason.NONE)));
    return atTop.at().timeS();
  }

  /** What passes for a sign change of the rate in the plane: a leak, and a plane that is turned. */
  private double topLeakS(StrokeShape shape) {
    double turnedSd = arm.gaps().turnSdRad(shape.topS(), arm.timeS(shape.peak()));
    double across = arm.track().rateUnitRadPerS(shape.top()).norm();
    return Math.hypot(TOP_LEAK_RAD_PER_S, across * turnedSd) / Math.max(shape.topSlope(), 1);
  }

  private void readDown(Span down) {
    height.ifPresent(h -> readArmLevels(h, down.toS()));
    Optional<Instant> seen =
        recording
            .unit(BodyPoint.CLUB_SHAFT)
            .flatMap(
                s -> ShaftLevel.seen(s, biases.radPerS(s.point()), arm.shape().takeawayS(), down));
    seen.ifPresent(i -> put(SwingEvent.SHAFT_LEVEL_DOWN, i, Reason.NONE));
    if (seen.isEmpty()) {
      Reason why = Reason.of(EventReason.SHAFT_FROM_HAND);
      hand.ifPresent(
          h ->
              ShaftLevel.carried(h, recording.player().handed().sign(), down)
                  .ifPresent(i -> put(SwingEvent.SHAFT_LEVEL_DOWN, h.gaps(), i, why)));
    }
  }

  private void readArmLevels(ArmHeight forearm, double impactS) {
    double alignmentSd = alignment.longAxisSdRad();
    forearm
        .levelDown(arm.timeS(arm.shape().top()), impactS, alignmentSd)
        .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_DOWN, forearm.gaps(), i, Reason.NONE));
    forearm
        .levelUp(impactS, Double.POSITIVE_INFINITY, alignmentSd)
        .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_THROUGH, forearm.gaps(), i, Reason.NONE));
  }

  private void readPelvis(Span down) {
    recording
        .unit(BodyPoint.PELVIS)
        .flatMap(
            s ->
                PelvisMotion.over(
                    s,
                    biases.radPerS(s.point()),
                    arm.shape().takeawayS() - 0.5,
                    down.toS() + 0.3,
                    recording.player().handed().sign()))
        .flatMap(p -> p.turnaround(arm.shape().takeawayS() + 0.2, down.toS()))
        .ifPresent(i -> put(SwingEvent.PELVIS_TURNAROUND, i, Reason.NONE));
  }

  private Span impactSpan() {
    StrokeShape shape = arm.shape();
    double peakS = arm.timeS(shape.peak());
    double endS = arm.timeS(Math.min(shape.end(), arm.track().size() - 1));
    return new Span(shape.topS() + 0.06, Math.min(endS, peakS + 0.3));
  }

  private Instant virtualImpact() {
    Span where = impactSpan();
    int from = arm.track().indexAt(where.fromS());
    int to = Math.min(arm.track().size(), arm.track().indexAt(where.toS()));
    double sdS = forearm.isPresent() ? VIRTUAL_SD_S : 3 * VIRTUAL_SD_S;
    double turnedSd = arm.gaps().turnSdRad(arm.shape().takeawayS(), where.toS());
    double turnedS = turnedSd / arm.peakRadPerS();
    Instant back =
        ArmEvents.nearestReturn(arm, from, Math.max(from + 1, to), Math.hypot(sdS, turnedS));
    return arm.gaps().moment(back, SMOOTH_S, SMOOTH_S).at();
  }

  /** The later of the moments from which arm and pelvis hold still. */
  private Optional<Instant> readFinish(double impactS) {
    Optional<Instant> arms = still(armUnit.stream(), impactS);
    Optional<Instant> hips = recording.unit(BodyPoint.PELVIS).flatMap(p -> still(p, impactS));
    Optional<Instant> finish = arms.map(a -> hips.filter(h -> h.timeS() > a.timeS()).orElse(a));
    finish.ifPresentOrElse(
        i -> put(SwingEvent.FINISH, i, Reason.NONE), () -> flags.add("finish-not-held"));
    return finish;
  }

  private Optional<Instant> still(UnitStream stream, double impactS) {
    return Finish.find(
        stream, biases.radPerS(stream.point()), impactS + 0.2, impactS + FINISH_WITHIN_S);
  }

  private void noteGaps(double impactS) {
    double fromS = arm.shape().takeawayS() - ADDRESS_S;
    boolean isLost =
        recording.units().stream()
            .filter(u -> ARM.contains(u.point()))
            .map(u -> Unseen.ofBoth(u.between(fromS - 1, impactS + 1)))
            .anyMatch(u -> u.touches(fromS, impactS + AFTER_IMPACT_S));
    if (isLost) {
      flags.add("arm-gap");
    }
  }

  /** A moment that two samples of a unit lie around. */
  private void put(SwingEvent event, GapDoubt gaps, Instant at, Reason why) {
    GapDoubt.Moment moment = gaps.moment(at, 0, 0);
    put(event, moment.at(), moment, why);
  }

  private void put(SwingEvent event, Instant at, GapDoubt.Moment moment, Reason why) {
    put(event, at, moment.isInGap() && why.isNone() ? Reason.of(EventReason.GAP) : why);
  }

  private void put(SwingEvent event, Instant at, Reason why) {
    events.put(
        event,
        new EventTime(
            event, at.timeS(), at.sdS(), why.isNone() ? Grade.MEASURED : Grade.ESTIMATED, why));
  }
}
