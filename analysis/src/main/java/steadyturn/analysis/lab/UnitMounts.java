package steadyturn.analysis.lab;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.MountedUnit;
import steadyturn.analysis.lab.body.SkinResponse;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.lab.family.Mount;
import steadyturn.fusion.rotation.MovingFrame;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Straps units on the body: the nominal mounting plus each unit's own alignment error, and the way
 * from the table where the lesson starts with a table rest.
 */
final class UnitMounts {

  /** A back slopes differently from person to person: twice the error about the hip line. */
  private static final double SLOPE_OF_BACK = 2;

  private final LessonSpec spec;
  private final long seed;
  private final Stage stage;
  private final DrawnPelvis geometry;
  private final List<Double> impactsS;
  private final Map<BodyPoint, MountedUnit> mounted = new EnumMap<>(BodyPoint.class);

  /**
   * Straps of one lesson.
   *
   * @param impactsS true times of the swings' blows
   */
  UnitMounts(LessonSpec spec, long seed, Stage stage, DrawnPelvis geometry, List<Double> impactsS) {
    this.impactsS = List.copyOf(impactsS);
    this.spec = spec;
    this.seed = seed;
    this.stage = stage;
    this.geometry = geometry;
  }

  /** Strapped once: what skin and strap do takes a walk through the whole lesson. */
  MountedUnit mount(BodyPoint point, BodyMotion body) {
    return mounted.computeIfAbsent(point, p -> strap(p, body));
  }

  private MountedUnit strap(BodyPoint point, BodyMotion body) {
    Quaternion q = nominal(point).times(misalignment(point));
    MountedUnit.Carry none = MountedUnit.Carry.NONE;
    MountedUnit worn = new MountedUnit(point, body, offsetM(point), q, shifts(point, body), none);
    if (!spec.wearSteps().contains(WearStep.TABLE_REST)) {
      return worn;
    }
    return new MountedUnit(point, body, worn.offsetM(), q, worn.shifts(), carry(point, worn));
  }

  /** Shakes and shifts laid on the stage, and what skin and strap of a family's player do. */
  private TimeFunction[] shifts(BodyPoint point, BodyMotion body) {
    TimeFunction[] laid = stage.shifts(point);
    if (stage.worn.isEmpty() || point == BodyPoint.CLUB_SHAFT) {
      return laid;
    }
    Mount mount = stage.worn.get().mount(point);
    MountedUnit onBone =
        new MountedUnit(
            point,
            body,
            offsetM(point),
            Quaternion.IDENTITY,
            new TimeFunction[0],
            MountedUnit.Carry.NONE);
    TimeFunction[] skin = SkinResponse.of(mount.skin(), onBone, stage.nowS);
    TimeFunction[] out = new TimeFunction[Stage.SHIFTS];
    for (int i = 0; i < Stage.SHIFTS; i++) {
      double creep = i < 3 ? mount.creepM().get(i) : mount.creepRad().get(i - 3);
      out[i] = TimeFunction.sum(laid[i], skin[i], creep(creep));
    }
    return out;
  }

  /** Half of it slowly from the first swing on, half in jerks at the blows. */
  private TimeFunction creep(double whole) {
    Steps steps = new Steps(0);
    double fromS = impactsS.isEmpty() ? 0 : impactsS.get(0) - 3;
    steps.by(fromS, Math.max(stage.nowS, fromS + 1), whole / 2);
    for (double impactS : impactsS) {
      steps.by(impactS - 0.05, impactS + 0.25, whole / 2 / impactsS.size());
    }
    return steps.build();
  }

  private Quaternion misalignment(BodyPoint point) {
    if (stage.worn.isPresent()) {
      return Quaternion.fromRotationVector(stage.worn.get().mount(point).leanRad());
    }
    RandomGenerator random = Draws.of(seed, "alignment " + point, 0);
    double sd = Math.toRadians(spec.body().alignmentDeg());
    boolean back = point == BodyPoint.PELVIS || point == BodyPoint.THORAX;
    return Quaternion.fromRotationVector(
        new Vector3(
            sd * random.nextGaussian(),
            (back ? SLOPE_OF_BACK : 1) * sd * random.nextGaussian(),
            sd * random.nextGaussian()));
  }

  /**
   * Back of the pelvis and of the chest: +x up along the segment, +z backwards. Limb and club: +x
   * to the fingers or the club head, +z out of the back of the hand.
   */
  private Quaternion nominal(BodyPoint point) {
    Quaternion qBackUnit = Quaternion.fromAxes(Vector3.Z, Vector3.Y, Vector3.X.times(-1));
    return switch (point) {
      case PELVIS, THORAX -> qBackUnit;
      case LEAD_FOREARM, LEAD_HAND, CLUB_SHAFT -> Quaternion.IDENTITY;
    };
  }

  private Vector3 offsetM(BodyPoint point) {
    return switch (point) {
      case PELVIS -> geometry.midHipFromUnitM().times(-1);
      case THORAX -> new Vector3(-0.11, 0, 0.28);
      case LEAD_FOREARM -> new Vector3(geometry.sizes().forearmUnitM(), 0, 0.03);
      case LEAD_HAND -> new Vector3(0.06, 0, 0.02);
      case CLUB_SHAFT -> new Vector3(0.35, 0, 0.0);
    };
  }

  /** The table is level to a degree or so; how the unit lies on it is chance. */
  private MountedUnit.Carry carry(BodyPoint point, MountedUnit worn) {
    RandomGenerator random = Draws.of(seed, "table " + point, 0);
    Quaternion qGroundTable =
        Quaternion.aboutZ(2 * Math.PI * random.nextDouble())
            .times(
                Quaternion.fromRotationVector(
                    new Vector3(0.02 * random.nextGaussian(), 0.02 * random.nextGaussian(), 0)));
    MovingFrame frame = new MovingFrame();
    worn.placer().place(0, frame);
    Quaternion qGroundSegment = frame.qGroundFrame().times(worn.qSegmentUnit().conjugate());
    Vector3 turn =
        qGroundSegment
            .conjugate()
            .times(qGroundTable)
            .times(worn.qSegmentUnit().conjugate())
            .rotationVector();
    Vector3 move = new Vector3(0.3 + 0.1 * random.nextDouble(), 0.2, -0.2);
    Steps share = new Steps(1).to(WearSteps.tableEndS(), WearSteps.wornS() - 0.5, 0);
    return new MountedUnit.Carry(share.build(), turn, move);
  }
}
