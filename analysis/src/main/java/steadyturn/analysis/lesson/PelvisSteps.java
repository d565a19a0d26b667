package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StillStep;
import steadyturn.fusion.wear.pelvis.BowStep;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.fusion.wear.pelvis.TiltStep;
import steadyturn.fusion.wear.pelvis.TurnStep;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * What the wear steps have said of the pelvis unit so far. A step holds until one of its kind comes
 * again.
 *
 * @param tableBias gyro bias from the rest on the table, rad/s
 * @param stance the quiet stance
 * @param tilt how far the standing pelvis is tilted, by a unit on a ruler
 * @param bowAxis hip line from the bow, unit axes
 * @param turnOnSpot the turn on the spot
 * @param results how each step went, the latest of its kind
 */
record PelvisSteps(
    Optional<Vector3> tableBias,
    Optional<Stance> stance,
    Optional<TiltStep> tilt,
    Optional<Vector3> bowAxis,
    Optional<TurnStep> turnOnSpot,
    List<StepResult> results) {

  static final PelvisSteps NONE =
      new PelvisSteps(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  PelvisSteps {
    results = List.copyOf(results);
  }

  /**
   * Which way was up in the unit while the player stood.
   *
   * @param forceUnitMps2 mean specific force, m/s^2
   * @param unitSdRad what the accelerometer's bias turns that by, rad (1 SD)
   */
  record Stance(Vector3 forceUnitMps2, double unitSdRad) {}

  /** These steps, and the one the mark names where it is a step of the pelvis. */
  PelvisSteps and(Recording recording, UnitStream pelvis, Mark mark) {
    double from = mark.onsetS();
    double to = mark.endS();
    return switch (mark.trialType()) {
      case "table-rest" -> table(StillStep.table(pelvis, from, to));
      case "aim" -> judged(StillStep.stance(pelvis, from, to, "aim").result());
      case "quiet-stance" ->
          stood(
              StillStep.stance(pelvis, from, to, "quiet-stance"),
              LevelTrack.Spreads.of(pelvis).tiltRad());
      case "tilt" -> tilted(recording, pelvis, from, to);
      case "bow" -> bow(BowStep.of(pelvis, tableBias.orElse(Vector3.ZERO), from, to));
      case "turn-on-spot" -> turn(TurnStep.of(pelvis, tableBias.orElse(Vector3.ZERO), from, to));
      default -> this;
    };
  }

  /** Nothing but how a step went: the aim is carried to the swings by {@link LessonGathering}. */
  private PelvisSteps judged(StepResult result) {
    return new PelvisSteps(tableBias, stance, tilt, bowAxis, turnOnSpot, with(result));
  }

  /** Whether the latest step of a kind was good enough. */
  boolean isGood(String step) {
    return results.stream().anyMatch(r -> r.step().equals(step) && r.used());
  }

  private PelvisSteps table(StillStep step) {
    return new PelvisSteps(
        step.result().used() ? Optional.of(step.meanRateRadPerS()) : tableBias,
        stance,
        tilt,
        bowAxis,
        turnOnSpot,
        with(step.result()));
  }

  private PelvisSteps stood(StillStep step, double unitSdRad) {
    return new PelvisSteps(
        tableBias,
        step.result().used() ? Optional.of(new Stance(step.meanForceMps2(), unitSdRad)) : stance,
        tilt,
        bowAxis,
        turnOnSpot,
        with(step.result()));
  }

  /** The unit on the ruler is the first of the others that ran in that time. */
  private PelvisSteps tilted(Recording recording, UnitStream pelvis, double from, double to) {
    Optional<UnitStream> ruler =
        Stream.of(BodyPoint.LEAD_HAND, BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT)
            .flatMap(point -> recording.unit(point).stream())
            .filter(unit -> unit.between(from, to).size() > 0)
            .findFirst();
    if (ruler.isEmpty()) {
      return judged(StepResult.again("tilt", 0, 1, "1", Reason.of(StepReason.TILT_NO_RULER)));
    }
    TiltStep step = TiltStep.of(ruler.get(), pelvis, from, to);
    return new PelvisSteps(
        tableBias,
        stance,
        step.result().used() ? Optional.of(step) : tilt,
        bowAxis,
        turnOnSpot,
        with(step.result()));
  }

  private PelvisSteps bow(BowStep step) {
    return new PelvisSteps(
        tableBias,
        stance,
        tilt,
        step.result().used() ? Optional.of(step.axisUnit()) : bowAxis,
        turnOnSpot,
        with(step.result()));
  }

  private PelvisSteps turn(TurnStep step) {
    return new PelvisSteps(
        tableBias,
        stance,
        tilt,
        bowAxis,
        step.result().used() ? Optional.of(step) : turnOnSpot,
        with(step.result()));
  }

  private List<StepResult> with(StepResult result) {
    List<StepResult> out = new ArrayList<>(results);
    out.removeIf(r -> r.step().equals(result.step()));
    out.add(result);
    return out;
  }

  /**
   * How the unit sits, from player facts and these steps; the turn on the spot is folded in later.
   */
  PelvisGeometry geometry(Player player) {
    PelvisGeometry geometry = PelvisGeometry.nominal(LeverArm.of(player));
    if (tilt.isPresent()) {
      geometry = geometry.afterTilt(tilt.get(), player);
    } else if (stance.isPresent()) {
      geometry = geometry.afterQuietStance(stance.get().forceUnitMps2(), stance.get().unitSdRad());
    }
    if (bowAxis.isPresent()) {
      geometry = geometry.afterBow(bowAxis.get());
    }
    return geometry;
  }
}
