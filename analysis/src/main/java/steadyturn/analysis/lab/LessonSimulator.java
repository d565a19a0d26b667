package steadyturn.analysis.lab;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.MountedUnit;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.family.ErrorFamily;
import steadyturn.analysis.lab.family.Stance;
import steadyturn.analysis.lab.family.WornBody;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.UnitTruth;
import steadyturn.analysis.lab.unit.InertialUnit;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.recording.write.UnitPieces;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;

/**
 * Simulates a lesson with exact truth. The motion of a right-handed player is made of polynomials
 * and sines, so that rate and specific force of each unit are exact; a left-handed player is the
 * mirror image in the vertical plane of the target line. The same spec and seed give the same
 * lesson on every machine; switching one source of error leaves all others as drawn.
 */
public final class LessonSimulator {

  private LessonSimulator() {}

  /** Simulates one lesson. */
  public static SyntheticLesson simulate(LessonSpec spec, long seed) {
    return simulate(spec, List.of(), seed);
  }

  /** Simulates one lesson in which lead arm and wrist follow given courses, one hit each. */
  static SyntheticLesson simulate(LessonSpec asked, List<ArmCourse> arms, long seed) {
    return inPieces(asked, arms, seed, Integer.MAX_VALUE).whole();
  }

  /** Simulates one lesson of any length, of which so many samples a unit are made at a time. */
  public static LongLesson inPieces(LessonSpec spec, long seed, int samples) {
    return inPieces(spec, List.of(), seed, samples);
  }

  private static LongLesson inPieces(
      LessonSpec asked, List<ArmCourse> arms, long seed, int samples) {
    Optional<WornBody> worn =
        asked.family().map(f -> f.errors().player(new Dice(Draws.of(seed, "worn", 0))));
    LessonSpec spec = asked.family().map(f -> asked.withBody(sizes(f.errors()))).orElse(asked);
    DrawnPelvis geometry =
        worn.map(w -> DrawnPelvis.of(w.pelvis()))
            .orElseGet(() -> DrawnPelvis.draw(spec.body(), Draws.of(seed, "pelvis", 0)));
    Choreography choreography =
        new Choreography(spec, arms, seed, geometry.standingTiltRad(), worn);
    choreography.lay();
    Stage stage = choreography.stage();
    BodyMotion body = stage.body(geometry.sizes(), stage.nowS);
    return new Assembly(spec, seed, geometry, stage, body, samples)
        .lesson(choreography.swings(), choreography.playerAimRad());
  }

  /** What of a family's errors the stage lays itself: sway, aim, the tilt to the side. */
  private static BodyErrors sizes(ErrorFamily errors) {
    Stance stance = errors.stance();
    return BodyErrors.none()
        .withSway(
            stance.mmPerS(),
            stance.degPerS(),
            stance.mmPerS() * stance.finish(),
            stance.degPerS() * stance.finish())
        .withStandingTilt()
        .withAim(errors.aimDeg());
  }

  /** Puts units, recording and truth of one lesson together. */
  private record Assembly(
      LessonSpec spec,
      long seed,
      DrawnPelvis geometry,
      Stage stage,
      BodyMotion body,
      int samplesAtATime) {

    LongLesson lesson(List<PlannedSwing> planned, double aimRad) {
      List<BodyPoint> points = spec.units().stream().sorted().toList();
      Map<BodyPoint, UnitClock> clocks = clocks(points);
      List<Double> impactsS = planned.stream().map(PlannedSwing::impactS).toList();
      UnitMounts mounts = new UnitMounts(spec, seed, stage, geometry, impactsS);
      List<UnitPieces> streams = new ArrayList<>();
      List<UnitTruth> units = new ArrayList<>();
      for (BodyPoint point : points) {
        MountedUnit worn = mounts.mount(point, body);
        UnitErrors usual = UnitErrors.draw(spec.unitGrade(), Draws.of(seed, "unit " + point, 0));
        UnitErrors errors =
            stage.worn.map(w -> usual.times(w.chip().noise(), w.chip().bias())).orElse(usual);
        UnitClock clock = clocks.getOrDefault(point, new UnitClock(0, 0, 0));
        streams.add(stream(worn, errors, clock));
        units.add(
            new UnitTruth(
                point, LessonTruth.mirror(worn.qSegmentUnit(), mirrored()), errors, clock));
      }
      UnitClock axis =
          points.isEmpty()
              ? new UnitClock(0, 0, 0)
              : clocks.getOrDefault(points.get(0), new UnitClock(0, 0, 0));
      return new LongLesson(
          new Recording(id(), player(), List.of(), marks(axis)),
          streams,
          truth(planned, aimRad, mounts, units, axis));
    }

    private boolean mirrored() {
      return spec.handed() == Handedness.LEFT;
    }

    private String id() {
      return "sub-" + spec.playerId() + "_ses-simulated_task-swing";
    }

    private Player player() {
      return new Player(
          spec.playerId(),
          spec.handed(),
          OptionalDouble.of(geometry.sizes().pelvisWidthMm()),
          OptionalDouble.of(geometry.sizes().pelvisDepthMm()),
          OptionalDouble.of(geometry.sizes().statureMm()));
    }

    /** The first unit's clock is the axis; the others are placed on it with a small error. */
    private Map<BodyPoint, UnitClock> clocks(List<BodyPoint> points) {
      Map<BodyPoint, UnitClock> clocks = new EnumMap<>(BodyPoint.class);
      UnitClock axis = new UnitClock(0, 0, 0);
      for (BodyPoint point : points) {
        RandomGenerator random = Draws.of(seed, "clock " + point, 0);
        double startS = 0.05 + spec.unit().startSpreadS * random.nextDouble();
        double skew = spec.unit().clockSkewPpm * 1e-6 * (0.6 + 0.8 * random.nextDouble());
        double signed = random.nextBoolean() ? skew : -skew;
        double errorS = spec.unit().startErrorS * random.nextGaussian();
        if (clocks.isEmpty()) {
          axis = new UnitClock(startS, 0, signed);
          clocks.put(point, axis);
        } else {
          clocks.put(point, new UnitClock(startS, axis.shownS(startS) + errorS, signed));
        }
      }
      return clocks;
    }

    private UnitPieces stream(MountedUnit worn, UnitErrors errors, UnitClock clock) {
      UnitFacts facts = facts(worn.point());
      Supplier<RandomGenerator> random = () -> Draws.of(seed, "noise " + worn.point(), 0);
      double untilS = stage.nowS - 0.2 * Draws.of(seed, "end " + worn.point(), 0).nextDouble();
      InertialUnit unit =
          new InertialUnit(
              facts,
              errors,
              clock,
              spec.unit().jitterS,
              spec.unit().lossPct,
              stage.worn.map(w -> w.chip().lowPassHz()).orElse(0.0),
              mirrored());
      return new UnitPieces(facts, () -> unit.pieces(worn.path(), untilS, random, samplesAtATime));
    }

    private UnitFacts facts(BodyPoint point) {
      int serial = 1000 + Draws.of(seed, "serial " + point, 0).nextInt(9000);
      boolean perfect = spec.unitGrade() == UnitGrade.PERFECT;
      UnitFacts facts =
          new UnitFacts(
              point,
              "SIM" + serial,
              spec.unit().rateHz,
              perfect ? Double.POSITIVE_INFINITY : spec.unit().accelFullScaleG * UnitErrors.G_MPS2,
              perfect ? Double.POSITIVE_INFINITY : Math.toRadians(spec.unit().gyroFullScaleDegPerS),
              false);
      return spec.unitGrade().calibrated() ? facts.asCalibrated() : facts;
    }

    private List<Mark> marks(UnitClock axis) {
      if (!spec.marks()) {
        return List.of();
      }
      return stage.marks.stream()
          .map(
              m ->
                  new Mark(
                      axis.shownS(m.onsetS()), m.durationS(), m.trialType(), m.club(), m.note()))
          .sorted(Comparator.comparingDouble(Mark::onsetS))
          .toList();
    }

    private LessonTruth truth(
        List<PlannedSwing> planned,
        double aimRad,
        UnitMounts mounts,
        List<UnitTruth> units,
        UnitClock axis) {
      List<SwingTruth> swings = new ArrayList<>();
      for (PlannedSwing plan : planned) {
        EventFinder finder = new EventFinder(body, plan);
        swings.add(
            new SwingTruth(
                swings.size() + 1,
                plan.kind(),
                plan.club(),
                finder.find(),
                body,
                axis,
                spec.wearSteps().contains(WearStep.NEUTRAL_WRIST)));
      }
      MountedUnit pelvis = mounts.mount(BodyPoint.PELVIS, body);
      return new LessonTruth(
          seed,
          spec.handed(),
          geometry.sizes().pelvisWidthMm(),
          geometry.sizes().pelvisDepthMm(),
          LessonTruth.mirror(pelvis.qSegmentUnit(), mirrored()),
          LessonTruth.mirror(
              pelvis.qSegmentUnit().conjugate().rotate(geometry.midHipFromUnitM()), mirrored()),
          geometry.standingTiltRad(),
          aimRad,
          units,
          swings,
          new LessonTruth.PelvisPath(body, axis, mirrored()));
    }
  }
}
