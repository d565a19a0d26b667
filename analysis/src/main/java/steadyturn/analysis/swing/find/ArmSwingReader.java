package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.RestBiases;
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
  private static final double LONGEST_GAP_S = 0.03;
  private static final double FINISH_WITHIN_S = 4;

  private final Recording recording;
  private final RestBiases biases;
  private final WristAlignment alignment;
  private final Optional<ArmMotion> forearm;
  private final Optional<ArmMotion> hand;
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
      ArmMotion arm) {
    this.recording = recording;
    this.biases = biases;
    this.alignment = alignment;
    this.arm = arm;
    double peakS = arm.timeS(arm.shape().peak());
    if (forearmUnit.isPresent()) {
      this.armUnit = forearmUnit.get();
      this.forearm = Optional.of(arm);
      this.hand = handUnit.flatMap(u -> u.around(peakS, settings));
    } else {
      this.armUnit = handUnit.orElseThrow();
      this.forearm = Optional.empty();
      this.hand = Optional.of(arm);
    }
  }

  /** The swing with all events that can be found. */
  FoundSwing read() {
    StrokeShape shape = arm.shape();
    readBack(shape);
    ArmBlow blow = new ArmBlow(recording, biases, forearm, hand, impactSpan());
    Optional<Instant> clear = blow.clear();
    Instant back = virtualImpact();
    Optional<Instant> shock = clear.or(() -> blow.weak(back));
    Instant impact = shock.orElse(back);
    EventReason why = shock.isPresent() ? EventReason.WEAK_BLOW : EventReason.VIRTUAL;
    put(SwingEvent.IMPACT, impact, clear.isPresent() ? Reason.NONE : Reason.of(why));
    Span down = new Span(shape.topS(), impact.timeS());
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

  private void readBack(StrokeShape shape) {
    boolean hands = forearm.isPresent();
    double takeawaySd = Math.hypot(shape.takeawaySdS(), hands ? 0 : HAND_TAKEAWAY_SD_S);
    Reason takeawayWhy = hands ? Reason.NONE : Reason.of(EventReason.FROM_HAND);
    put(SwingEvent.ADDRESS, new Instant(shape.takeawayS() - REFERENCE_S, takeawaySd), takeawayWhy);
    put(SwingEvent.TAKEAWAY, new Instant(shape.takeawayS(), takeawaySd), takeawayWhy);
    double leakS = TOP_LEAK_RAD_PER_S / Math.max(shape.topSlope(), 1);
    put(
        SwingEvent.TOP,
        new Instant(shape.topS(), Math.hypot(leakS, hands ? 0.0002 : 0.02)),
        hands ? Reason.NONE : Reason.of(EventReason.TOP_FROM_HAND));
    if (hands) {
      ArmEvents.levelUp(arm, shape.takeaway(), shape.top(), alignment.longAxisSdRad())
          .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_BACK, i, Reason.NONE));
    }
  }

  private void readDown(Span down) {
    forearm.ifPresent(f -> readArmLevels(f, down));
    Optional<Instant> seen =
        recording
            .unit(BodyPoint.CLUB_SHAFT)
            .flatMap(
                s -> ShaftLevel.seen(s, biases.radPerS(s.point()), arm.shape().takeawayS(), down));
    seen.ifPresent(i -> put(SwingEvent.SHAFT_LEVEL_DOWN, i, Reason.NONE));
    if (seen.isEmpty()) {
      hand.flatMap(h -> ShaftLevel.carried(h, recording.player().handed().sign(), down))
          .ifPresent(
              i -> put(SwingEvent.SHAFT_LEVEL_DOWN, i, Reason.of(EventReason.SHAFT_FROM_HAND)));
    }
  }

  private void readArmLevels(ArmMotion forearm, Span down) {
    int last = forearm.track().size();
    int impact = Math.min(forearm.track().indexAt(down.toS()), last - 1);
    double alignmentSd = alignment.longAxisSdRad();
    ArmEvents.levelDown(forearm, forearm.shape().top(), impact, alignmentSd)
        .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_DOWN, i, Reason.NONE));
    ArmEvents.levelUp(forearm, impact, last, alignmentSd)
        .ifPresent(i -> put(SwingEvent.LEAD_ARM_LEVEL_THROUGH, i, Reason.NONE));
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
    return ArmEvents.nearestReturn(
        arm, from, Math.max(from + 1, to), forearm.isPresent() ? VIRTUAL_SD_S : 3 * VIRTUAL_SD_S);
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
    int from = arm.shape().takeaway();
    int to = arm.track().indexAt(impactS);
    if (GyroTrack.longestGapS(arm.stretch(), from, Math.min(to, arm.track().size()))
        > LONGEST_GAP_S) {
      flags.add("arm-gap");
    }
  }

  private void put(SwingEvent event, Instant at, Reason why) {
    events.put(
        event,
        new EventTime(
            event, at.timeS(), at.sdS(), why.isNone() ? Grade.MEASURED : Grade.ESTIMATED, why));
  }
}
