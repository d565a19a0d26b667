package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.BlowDelay;

/**
 * Finds swings where only the pelvis was worn: a turn back, a turn round and a faster turn forward.
 * Top and impact of the hands are inferred from it, with the spread that the order of the body's
 * turns has among players.
 */
final class PelvisSwings {

  private static final Reason WHY = Reason.of(EventReason.FROM_PELVIS);
  private static final double FAST_RAD_PER_S = Math.toRadians(150);
  private static final double LEAST_BACK_RAD = Math.toRadians(10);
  private static final double LEAST_FORWARD_RAD = Math.toRadians(45);
  // the hands turn round after the pelvis (Meister et al. 2011: the pelvis reverses first), at once
  // or a fifth of a second later; the size is our choice
  private static final Instant TOP_AFTER_TURNAROUND = new Instant(0.08, 0.06);
  // the pelvis is fastest at 68 % of the downswing (Vena et al. 2011, one subject)
  private static final double PEAK_PART = 0.68;
  // other bodies are fastest anywhere from a third of it to past the ball: our assumption
  private static final double PEAK_PART_SD = 0.3;
  // hands that turn round swing down in 0.23-0.33 s (common practice, no source), beginners and
  // seniors more slowly
  private static final Instant DOWNSWING = new Instant(0.28, 0.06);
  private static final Instant USUAL_IMPACT =
      new Instant(
          TOP_AFTER_TURNAROUND.timeS() + DOWNSWING.timeS(),
          Math.hypot(TOP_AFTER_TURNAROUND.sdS(), DOWNSWING.sdS()));
  // who takes more time back than most may pause at the top and comes down more slowly, by some
  // part of that time: our assumptions
  private static final double USUAL_BACK_S = 0.75;
  private static final Instant TOP_OF_SLOW = new Instant(0.1, 0.25);
  private static final Instant IMPACT_OF_SLOW = new Instant(0.4, 0.4);
  // how long a blow takes through arms and trunk, and how softly it rises there, is known from no
  // measured body: our assumption
  private static final double ON_ITS_WAY_SD_S = 0.006;

  private final Recording recording;
  private final UnitStream stream;
  private final Vector3 bias;
  private final Faults faults;

  PelvisSwings(Recording recording, UnitStream stream, RestBiases biases, Faults faults) {
    this.faults = faults;
    this.recording = recording;
    this.stream = stream;
    this.bias = biases.radPerS(stream.point());
  }

  /** All swings by time. */
  List<FoundSwing> all() {
    List<FoundSwing> found = new ArrayList<>();
    double freeFromS = Double.NEGATIVE_INFINITY;
    for (int peak : FastBursts.peaks(stream, FAST_RAD_PER_S)) {
      double peakS = stream.timeS(peak);
      if (peakS < freeFromS) {
        continue;
      }
      Optional<FoundSwing> swing =
          faults.keep(recording.id(), peakS, () -> around(peakS)).flatMap(s -> s);
      if (swing.isPresent()) {
        found.add(swing.get());
        freeFromS = swing.get().impactS() + 0.5;
      }
    }
    return found;
  }

  /** The swing whose fastest turn forward lies nearest to the blow of another unit's clock. */
  Optional<FoundSwing> near(double impactS, double reachS) {
    int sign = recording.player().handed().sign();
    return PelvisMotion.over(stream, bias, impactS - reachS, impactS + reachS, sign)
        .map(hips -> hips.timeS()[hips.fastest(impactS - reachS, impactS + reachS)])
        .flatMap(peakS -> faults.keep(recording.id(), peakS, () -> around(peakS)).flatMap(s -> s));
  }

  private Optional<FoundSwing> around(double peakS) {
    int sign = recording.player().handed().sign();
    return PelvisMotion.over(stream, bias, peakS - 3, peakS + 1, sign)
        .flatMap(
            pelvis -> {
              int fastest = pelvis.fastest(peakS - 0.2, peakS + 0.2);
              return StrokeShape.around(
                      pelvis.timeS(), pelvis.turnRadPerS(), fastest, PelvisMotion.SLOW_RAD_PER_S)
                  .filter(shape -> isFullSwing(pelvis, shape))
                  .map(shape -> read(pelvis, shape));
            });
  }

  private boolean isFullSwing(PelvisMotion pelvis, StrokeShape shape) {
    double[] time = pelvis.timeS();
    return pelvis.turnRadPerS()[shape.peak()] > FAST_RAD_PER_S
        && shape.backRad() > LEAST_BACK_RAD
        && shape.forwardRad(time, pelvis.turnRadPerS()) > LEAST_FORWARD_RAD
        && shape.hasTempo(time);
  }

  private FoundSwing read(PelvisMotion pelvis, StrokeShape shape) {
    double turnS = shape.topS();
    double peakS = pelvis.timeS()[shape.peak()];
    Instant takeaway = pelvis.leaves(shape.half());
    double takeawayS = takeaway.timeS();
    double slowS = Math.max(0, turnS - takeawayS - USUAL_BACK_S);
    Instant top = slower(TOP_AFTER_TURNAROUND, TOP_OF_SLOW, slowS, turnS);
    Instant usual = slower(USUAL_IMPACT, IMPACT_OF_SLOW, slowS, turnS);
    Optional<Instant> shock = shock(pelvis, peakS);
    Instant impact =
        shock.orElseGet(
            () -> fromFastest(turnS, peakS, usual).with(usual).after(top.timeS() + 0.1));
    double impactS = impact.timeS();
    Instant around = pelvis.turnaround(takeawayS + 0.2, peakS).orElse(new Instant(turnS, 0.02));
    List<EventTime> events = new ArrayList<>();
    events.add(event(SwingEvent.ADDRESS, takeawayS - 0.14, takeaway.sdS(), WHY));
    events.add(event(SwingEvent.TAKEAWAY, takeawayS, takeaway.sdS(), WHY));
    events.add(event(SwingEvent.PELVIS_TURNAROUND, around.timeS(), around.sdS(), Reason.NONE));
    events.add(event(SwingEvent.TOP, top.timeS(), top.sdS(), WHY));
    events.add(
        event(SwingEvent.IMPACT, impactS, impact.sdS(), shock.isPresent() ? Reason.NONE : WHY));
    Optional<Instant> finish = Finish.find(stream, bias, impactS + 0.2, impactS + 4);
    finish.ifPresent(i -> events.add(event(SwingEvent.FINISH, i.timeS(), i.sdS(), Reason.NONE)));
    List<String> flags = new ArrayList<>(List.of("pelvis-only"));
    if (finish.isEmpty()) {
      flags.add("finish-not-held");
    }
    return new FoundSwing(
        stream,
        events,
        shock.isPresent(),
        takeawayS,
        impactS,
        finish.map(Instant::timeS).orElse(impactS + 1.5),
        flags);
  }

  /**
   * Impact as the fastest turn forward tells it. A turn that is fastest soon does not make the
   * downswing shorter than usual, so it is known no better than that.
   */
  private static Instant fromFastest(double turnS, double peakS, Instant usual) {
    double downS = (peakS - turnS) / PEAK_PART;
    double longerS = Math.max(downS, usual.timeS() - turnS);
    return new Instant(turnS + downS, longerS * PEAK_PART_SD / PEAK_PART);
  }

  /** What comes so long after the turnaround, later by a part of what the way back took more. */
  private static Instant slower(Instant usual, Instant part, double slowS, double turnS) {
    return new Instant(
        turnS + usual.timeS() + slowS * part.timeS(), Math.hypot(usual.sdS(), slowS * part.sdS()));
  }

  /** The blow of the ball as the trunk feels it, after the fastest turn. */
  private static Optional<Instant> shock(PelvisMotion pelvis, double peakS) {
    GyroTrack track = pelvis.track();
    return BallBlow.find(
            track,
            track.indexAt(peakS - 0.05),
            Math.min(track.size(), track.indexAt(peakS + 0.3)),
            BallBlow.Least.PELVIS)
        .map(Onset::instant)
        .map(i -> i.earlier(BlowDelay.TRUNK_S, BlowDelay.TRUNK_SD_S).and(ON_ITS_WAY_SD_S));
  }

  private static EventTime event(SwingEvent event, double timeS, double sdS, Reason why) {
    Grade grade = why.isNone() ? Grade.MEASURED : Grade.ESTIMATED;
    return new EventTime(event, timeS, sdS, grade, why);
  }
}
