package steadyturn.analysis.lab;

import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Lays one full swing on the stage, from the first move of the takeaway to the finish. Every joint
 * goes back by one step and down and through by two that overlap, so that its value at impact is
 * exact; the lead arm's two steps overlap at the top, so that it reverses briskly.
 */
final class SwingMoves {

  private final Stage stage;
  private final SwingPlan plan;
  private final Map<BodyPoint, double[]> skinHabit;
  private final RandomGenerator random;
  private final double startS;
  private final double topS;
  private final double impactS;
  private Optional<ArmCourse> given = Optional.empty();

  /**
   * @param startS true time of the first move
   * @param skinHabit each unit's usual skin shift of this player, in units of the spread: six at
   *     the top, six at impact, six at the finish
   */
  SwingMoves(
      Stage stage,
      SwingPlan plan,
      double startS,
      Map<BodyPoint, double[]> skinHabit,
      RandomGenerator random) {
    this.stage = stage;
    this.plan = plan;
    this.skinHabit = skinHabit;
    this.random = random;
    this.startS = startS;
    this.topS = startS + plan.of(Trait.BACK_S);
    this.impactS = topS + plan.of(Trait.DOWN_S);
  }

  double impactS() {
    return impactS;
  }

  /** True time at which the last step of the swing ends. */
  double endS() {
    return impactS + 0.75;
  }

  /** Lets arm and wrist follow a given course. */
  void follow(ArmCourse course) {
    given = Optional.of(course);
  }

  void lay() {
    pelvis();
    trunk();
    plane();
    if (given.isPresent()) {
      given.get().lay(stage, plan, startS, topS);
    } else {
      arm();
      wrist();
    }
    new SwingShakes(stage, startS, topS, impactS, endS(), random)
        .lay(skinHabit, plan.kind() == SwingKind.HIT);
    stage.sway(
        impactS, impactS + 0.7, stage.errors.swayFinishMmPerS(), stage.errors.swayFinishDegPerS());
  }

  private void pelvis() {
    double lead = plan.of(Trait.PELVIS_LEAD_S);
    pelvisJoint(
        Joint.TURN,
        lead,
        plan.rad(Trait.TURN_TOP_DEG),
        plan.rad(Trait.TURN_IMPACT_DEG),
        plan.rad(Trait.TURN_FINISH_DEG));
    double slideImpact = plan.milli(Trait.SLIDE_IMPACT_MM);
    pelvisJoint(
        Joint.PLACE_X,
        lead + 0.03,
        plan.milli(Trait.SLIDE_TOP_MM),
        slideImpact,
        slideImpact + plan.milli(Trait.SLIDE_THROUGH_MM));
    // towards the ball is -y
    pelvisJoint(
        Joint.PLACE_Y,
        lead,
        -plan.milli(Trait.THRUST_TOP_MM),
        -plan.milli(Trait.THRUST_IMPACT_MM),
        -plan.milli(Trait.THRUST_FINISH_MM));
    pelvisJoint(
        Joint.PLACE_Z,
        lead,
        plan.milli(Trait.LIFT_TOP_MM),
        plan.milli(Trait.LIFT_IMPACT_MM),
        plan.milli(Trait.LIFT_FINISH_MM));
    pelvisJoint(
        Joint.TILT,
        lead,
        plan.rad(Trait.TILT_TOP_DEG),
        plan.rad(Trait.TILT_IMPACT_DEG),
        plan.rad(Trait.TILT_FINISH_DEG));
    pelvisJoint(
        Joint.SIDE_TILT,
        lead,
        plan.rad(Trait.SIDE_TILT_TOP_DEG),
        plan.rad(Trait.SIDE_TILT_IMPACT_DEG),
        plan.rad(Trait.SIDE_TILT_FINISH_DEG));
  }

  /** A joint that reverses {@code leadS} before the hands; values are changes since address. */
  private void pelvisJoint(Joint joint, double leadS, double top, double impact, double finish) {
    Steps steps = stage.joint(joint);
    double base = steps.level();
    steps.to(startS, topS - leadS + 0.05, base + top);
    steps.through(
        topS - leadS - 0.05,
        impactS + 0.10,
        impactS,
        base + impact,
        impactS - 0.10,
        endS() - 0.05,
        base + finish);
  }

  private void trunk() {
    pelvisJoint(
        Joint.TRUNK_TURN,
        0.02,
        plan.rad(Trait.TRUNK_TOP_DEG),
        plan.rad(Trait.TRUNK_IMPACT_DEG),
        plan.rad(Trait.TRUNK_FINISH_DEG));
  }

  /** The arm's plane leans over more in the swing than at address, as arms lift off the body. */
  private void plane() {
    Steps plane = stage.joint(Joint.PLANE);
    plane.to(startS + 0.05, topS, plan.rad(Trait.PLANE_TOP_DEG));
    plane.through(
        topS,
        impactS + 0.1,
        impactS,
        plan.rad(Trait.PLANE_IMPACT_DEG),
        impactS,
        impactS + 0.55,
        plan.rad(Trait.PLANE_FINISH_DEG));
  }

  private void arm() {
    Steps arm = stage.joint(Joint.ARM);
    arm.to(startS, topS + 0.10, plan.rad(Trait.ARM_TOP_DEG));
    arm.through(
        topS - 0.10,
        impactS + 0.20,
        impactS,
        plan.rad(Trait.ARM_IMPACT_DEG),
        impactS - 0.04,
        impactS + 0.60,
        plan.rad(Trait.ARM_FINISH_DEG));
    Steps roll = stage.joint(Joint.ROLL);
    roll.to(startS + 0.05, topS - 0.05, plan.rad(Trait.ROLL_TOP_DEG));
    roll.through(
        impactS - 0.17,
        impactS + 0.06,
        impactS,
        plan.rad(Trait.ROLL_IMPACT_DEG),
        impactS - 0.05,
        impactS + 0.35,
        plan.rad(Trait.ROLL_FINISH_DEG));
  }

  private void wrist() {
    Steps cock = stage.joint(Joint.COCK);
    cock.to(startS + 0.1, topS, plan.rad(Trait.COCK_TOP_DEG));
    double releaseS = impactS - plan.milli(Trait.RELEASE_START_MS);
    cock.through(
        Math.max(releaseS, topS),
        releaseS + plan.milli(Trait.RELEASE_LENGTH_MS),
        impactS,
        plan.rad(Trait.COCK_IMPACT_DEG),
        impactS + 0.03,
        impactS + 0.45,
        plan.rad(Trait.COCK_FINISH_DEG));
    Steps flexion = stage.joint(Joint.FLEXION);
    flexion.to(startS + 0.1, topS, plan.rad(Trait.FLEXION_TOP_DEG));
    flexion.through(
        topS,
        impactS + 0.1,
        impactS,
        plan.rad(Trait.FLEXION_IMPACT_DEG),
        impactS + 0.05,
        impactS + 0.5,
        plan.rad(Trait.FLEXION_ADDRESS_DEG));
  }
}
