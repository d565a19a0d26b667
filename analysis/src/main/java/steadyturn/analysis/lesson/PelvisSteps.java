package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StepSearch;
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

  private static final Set<String> WORDS =
      Set.of("table-rest", "aim", "quiet-stance", "tilt", "bow", "turn-on-spot");

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

  /**
   * These steps, and the one the mark names where it is a step of the pelvis. The aim is only
   * judged here: {@link LessonGathering} carries it to the swings.
   */
  PelvisSteps and(Recording recording, UnitStream pelvis, Mark mark) {
    double from = mark.onsetS();
    double to = mark.endS();
    return switch (mark.trialType()) {
      case "table-rest" -> table(StillStep.table(pelvis, from, to));
      case "aim" -> after(StillStep.stance(pelvis, from, to, "aim").result(), this);
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

  /** The mark laid on that part of its stretch in which the step was done. */
  Mark settled(Recording recording, UnitStream pelvis, Mark mark) {
    return WORDS.contains(mark.trialType())
        ? search(pelvis, true)
            .settled(mark, (fromS, toS) -> judged(recording, pelvis, mark, fromS, toS))
        : mark;
  }

  /** How a step of the pelvis stands while it is done; none before anything was seen. */
  Optional<StepSearch.Attempt> look(Recording soFar, UnitStream pelvis, Mark mark, boolean isOver) {
    return WORDS.contains(mark.trialType())
        ? search(pelvis, isOver).find(mark, (fromS, toS) -> judged(soFar, pelvis, mark, fromS, toS))
        : Optional.empty();
  }

  private StepSearch search(UnitStream pelvis, boolean isOver) {
    return new StepSearch(pelvis, tableBias.orElse(Vector3.ZERO), isOver);
  }

  private StepResult judged(
      Recording recording, UnitStream pelvis, Mark mark, double fromS, double toS) {
    List<StepResult> all = and(recording, pelvis, mark.during(fromS, toS)).results;
    return all.get(all.size() - 1);
  }

  /** The step judged; what it found holds from now on where it was good. */
  private PelvisSteps after(StepResult result, PelvisSteps good) {
    PelvisSteps now = result.used() ? good : this;
    List<StepResult> all = new ArrayList<>(results);
    all.removeIf(r -> r.step().equals(result.step()));
    all.add(result);
    return new PelvisSteps(now.tableBias, now.stance, now.tilt, now.bowAxis, now.turnOnSpot, all);
  }

  /** Whether the latest step of a kind was good enough. */
  boolean isGood(String step) {
    return results.stream().anyMatch(r -> r.step().equals(step) && r.used());
  }

  private PelvisSteps table(StillStep step) {
    Optional<Vector3> found = Optional.of(step.meanRateRadPerS());
    return after(step.result(), new PelvisSteps(found, stance, tilt, bowAxis, turnOnSpot, results));
  }

  private PelvisSteps stood(StillStep step, double unitSdRad) {
    Optional<Stance> found = Optional.of(new Stance(step.meanForceMps2(), unitSdRad));
    return after(
        step.result(), new PelvisSteps(tableBias, found, tilt, bowAxis, turnOnSpot, results));
  }

  /** The unit on the ruler is the first of the others that ran in that time. */
  private PelvisSteps tilted(Recording recording, UnitStream pelvis, double from, double to) {
    Optional<TiltStep> found =
        Stream.of(BodyPoint.LEAD_HAND, BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT)
            .flatMap(point -> recording.unit(point).stream())
            .filter(unit -> unit.between(from, to).size() > 0)
            .findFirst()
            .map(ruler -> TiltStep.of(ruler, pelvis, from, to));
    StepResult result =
        found
            .map(TiltStep::result)
            .orElse(StepResult.again("tilt", 0, 1, "1", Reason.of(StepReason.TILT_NO_RULER)));
    return after(result, new PelvisSteps(tableBias, stance, found, bowAxis, turnOnSpot, results));
  }

  private PelvisSteps bow(BowStep step) {
    Optional<Vector3> found = Optional.of(step.axisUnit());
    return after(
        step.result(), new PelvisSteps(tableBias, stance, tilt, found, turnOnSpot, results));
  }

  private PelvisSteps turn(TurnStep step) {
    PelvisSteps good =
        new PelvisSteps(tableBias, stance, tilt, bowAxis, Optional.of(step), results);
    return after(step.result(), good);
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
