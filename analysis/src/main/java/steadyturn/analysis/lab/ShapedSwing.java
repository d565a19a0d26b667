package steadyturn.analysis.lab;

import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.curve.FreeCourse;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.family.SwingTiming;

/**
 * Lays one full swing on the stage, from the first move of the takeaway to the finish: every joint
 * through points drawn for this swing, none of them by a formula that anyone fits.
 */
final class ShapedSwing {

  private static final int CELLS = 14;

  private final Stage stage;
  private final SwingPlan plan;
  private final SwingTiming timing;
  private final Dice dice;
  private final double startS;
  private final double topS;
  private final double downS;
  private final double impactS;

  /**
   * Plans a swing.
   *
   * @param startS true time of the first move
   */
  ShapedSwing(Stage stage, SwingPlan plan, SwingTiming timing, double startS, Dice dice) {
    this.stage = stage;
    this.plan = plan;
    this.timing = timing;
    this.dice = dice;
    this.startS = startS;
    this.topS = startS + plan.of(Trait.BACK_S);
    this.downS = topS + timing.pauseS();
    this.impactS = downS + plan.of(Trait.DOWN_S);
  }

  double topS() {
    return topS;
  }

  double impactS() {
    return impactS;
  }

  /** Lays all joints; gives the true time at which the last of them rests. */
  double lay() {
    double endS = arm();
    pelvis(Joint.TURN, endS, Trait.TURN_TOP_DEG, Trait.TURN_IMPACT_DEG, Trait.TURN_FINISH_DEG);
    pelvis(Joint.TILT, endS, Trait.TILT_TOP_DEG, Trait.TILT_IMPACT_DEG, Trait.TILT_FINISH_DEG);
    pelvis(
        Joint.SIDE_TILT,
        endS,
        Trait.SIDE_TILT_TOP_DEG,
        Trait.SIDE_TILT_IMPACT_DEG,
        Trait.SIDE_TILT_FINISH_DEG);
    pelvis(
        Joint.TRUNK_TURN,
        endS,
        Trait.TRUNK_TOP_DEG,
        Trait.TRUNK_IMPACT_DEG,
        Trait.TRUNK_FINISH_DEG);
    double slideM = plan.milli(Trait.SLIDE_IMPACT_MM);
    pelvis(
        Joint.PLACE_X,
        endS,
        new double[] {plan.milli(Trait.SLIDE_TOP_MM), slideM},
        slideM + plan.milli(Trait.SLIDE_THROUGH_MM));
    // towards the ball is -y
    pelvis(
        Joint.PLACE_Y,
        endS,
        new double[] {-plan.milli(Trait.THRUST_TOP_MM), -plan.milli(Trait.THRUST_IMPACT_MM)},
        -plan.milli(Trait.THRUST_FINISH_MM));
    pelvis(
        Joint.PLACE_Z,
        endS,
        new double[] {plan.milli(Trait.LIFT_TOP_MM), plan.milli(Trait.LIFT_IMPACT_MM)},
        plan.milli(Trait.LIFT_FINISH_MM));
    plane(endS);
    wrist(endS);
    return endS + 0.06;
  }

  private void pelvis(Joint joint, double endS, Trait top, Trait impact, Trait finish) {
    pelvis(joint, endS, new double[] {plan.rad(top), plan.rad(impact)}, plan.rad(finish));
  }

  /** A joint that turns round about the top; values are changes since address. */
  private void pelvis(Joint joint, double endS, double[] topAndImpact, double finish) {
    Steps steps = stage.joint(joint);
    double base = steps.level();
    double top = topAndImpact[0];
    double impact = topAndImpact[1];
    double fromS = startS + timing.lateS() + dice.about(0, 0.012);
    double turnS = topS - plan.of(Trait.PELVIS_LEAD_S) + dice.about(0, 0.015);
    double way = timing.wander() * (Math.abs(top) + Math.abs(impact - top));
    FreeCourse course = new FreeCourse(fromS, base);
    double bend = dice.times(0.8, 1.25);
    for (double u : new double[] {0.3, 0.65}) {
      double part = Math.pow(u * u * (3 - 2 * u), bend);
      course.to(fromS + u * (turnS - fromS), base + top * part + way * dice.about(0, 0.5));
    }
    course.to(turnS, base + top);
    double middleS = turnS + dice.even(0.45, 0.65) * (impactS - turnS);
    course.to(
        middleS, base + top + dice.even(0.4, 0.62) * (impact - top) + way * dice.about(0, 0.5));
    course.to(impactS, base + impact);
    double restS = impactS + (endS - impactS) * dice.even(0.8, 1.1);
    double passS = impactS + dice.even(0.3, 0.45) * (restS - impactS);
    course.to(passS, base + impact + dice.even(0.5, 0.75) * (finish - impact));
    course.to(restS, base + finish).lay(steps);
  }

  /** Gives when the arm comes to rest. */
  private double arm() {
    Steps arm = stage.joint(Joint.ARM);
    double address = arm.level();
    double top = plan.rad(Trait.ARM_TOP_DEG);
    double impact = plan.rad(Trait.ARM_IMPACT_DEG);
    FreeCourse course = new FreeCourse(startS, address);
    double[] back = new double[CELLS];
    double[] down = new double[CELLS];
    for (int i = 0; i < CELLS; i++) {
      double u = (i + 0.5) / CELLS;
      double waver = Math.exp(timing.uneven() * dice.about(0, 1));
      back[i] = Math.pow(u, timing.startPower()) * Math.pow(1 - u, timing.topPower()) * waver;
      down[i] = downSpeed(u);
    }
    add(course, startS, topS, address, top, back);
    if (timing.pauseS() > 0) {
      double creep = Math.toRadians(dice.even(0, 2));
      course.to(downS, top - creep);
      add(course, downS, impactS, top - creep, impact, down);
    } else {
      add(course, topS, impactS, top, impact, down);
    }
    double speed = (impact - top) * down[CELLS - 1] / sum(down) * CELLS / (impactS - downS);
    double through = plan.rad(Trait.ARM_FINISH_DEG) - impact;
    double lengthS = Math.min(0.9, (timing.throughPower() + 1) * through / speed);
    for (int i = 1; i <= 8; i++) {
      double part = 1 - Math.pow(1 - i / 8.0, timing.throughPower() + 1);
      course.to(impactS + lengthS * i / 8, impact + part * through);
    }
    course.lay(arm);
    return course.endS();
  }

  private double downSpeed(double u) {
    double after = (u - timing.peakAt()) / (1 - timing.peakAt());
    return u < timing.peakAt()
        ? Math.pow(u / timing.peakAt(), timing.downPower())
        : 1 - (1 - timing.slowing()) * after * after;
  }

  private static double sum(double[] speed) {
    double sum = 0;
    for (double s : speed) {
      sum += s;
    }
    return sum;
  }

  private static void add(
      FreeCourse course, double fromS, double toS, double from, double to, double[] speed) {
    double whole = sum(speed);
    double done = 0;
    for (int i = 0; i < speed.length; i++) {
      done += speed[i] / whole;
      course.to(fromS + (i + 1.0) / speed.length * (toS - fromS), from + done * (to - from));
    }
  }

  /** The arm's plane leans over more in the swing than at address, as arms lift off the body. */
  private void plane(double endS) {
    Steps plane = stage.joint(Joint.PLANE);
    double top = plan.rad(Trait.PLANE_TOP_DEG);
    double impact = plan.rad(Trait.PLANE_IMPACT_DEG);
    new FreeCourse(startS + 0.03, plane.level())
        .to(startS + dice.even(0.4, 0.6) * (topS - startS), (plane.level() + top) / 2)
        .to(topS - 0.02, top)
        .to(downS + dice.even(0.06, 0.1), top + 0.3 * (impact - top) + timing.loopRad())
        .to(impactS, impact)
        .to(endS, plan.rad(Trait.PLANE_FINISH_DEG))
        .lay(plane);
  }

  private void wrist(double endS) {
    double backS = topS - startS;
    double releaseS =
        Math.max(impactS - plan.milli(Trait.RELEASE_START_MS), downS + dice.even(0.01, 0.04));
    double openS = Math.max(impactS + 0.015, releaseS + plan.milli(Trait.RELEASE_LENGTH_MS));
    double cock = plan.rad(Trait.COCK_TOP_DEG);
    double less = Math.toRadians(dice.even(2, 10));
    Steps cocking = stage.joint(Joint.COCK);
    new FreeCourse(startS + timing.setFrom() * backS, cocking.level())
        .to(startS + timing.setUntil() * backS, cock - Math.toRadians(dice.even(0, 8)))
        .to(Math.max(topS, startS + timing.setUntil() * backS), cock)
        .to(releaseS, cock + Math.toRadians(dice.even(-3, 4)))
        .to(impactS, plan.rad(Trait.COCK_IMPACT_DEG))
        .to(openS, plan.rad(Trait.COCK_IMPACT_DEG) - less)
        .to(openS + 0.06, plan.rad(Trait.COCK_IMPACT_DEG) - less)
        .to(endS, plan.rad(Trait.COCK_FINISH_DEG))
        .lay(cocking);
    between(Joint.FLEXION, plan.rad(Trait.FLEXION_TOP_DEG), plan.rad(Trait.FLEXION_IMPACT_DEG))
        .to(endS, plan.rad(Trait.FLEXION_ADDRESS_DEG))
        .lay(stage.joint(Joint.FLEXION));
    between(Joint.PLAY, timing.playRad() * dice.about(0.3, 0.7), timing.playRad() * play())
        .to(impactS + 0.06, -timing.playRad() * play())
        .to(endS, 0)
        .lay(stage.joint(Joint.PLAY));
    Steps roll = stage.joint(Joint.ROLL);
    double top = plan.rad(Trait.ROLL_TOP_DEG);
    new FreeCourse(startS + 0.04, roll.level())
        .to(startS + dice.even(0.45, 0.65) * backS, dice.even(0.45, 0.7) * top)
        .to(topS - dice.even(0, 0.1), top)
        .to(Math.max(downS + 0.02, impactS - timing.rollS()), top * dice.even(0.92, 1.03))
        .to(impactS, plan.rad(Trait.ROLL_IMPACT_DEG))
        .to(impactS + dice.even(0.1, 0.16), 0.75 * plan.rad(Trait.ROLL_FINISH_DEG))
        .to(Math.min(endS, impactS + 0.4), plan.rad(Trait.ROLL_FINISH_DEG))
        .lay(roll);
  }

  private double play() {
    return dice.about(-0.6, 0.5);
  }

  /** A wrist angle up to impact, strays included. */
  private FreeCourse between(Joint joint, double top, double impact) {
    double address = stage.joint(joint).level();
    double stray = timing.wander() * (Math.abs(top - address) + Math.abs(impact - top) + 0.1);
    return new FreeCourse(startS + 0.05, address)
        .to(startS + 0.6 * (topS - startS), (address + top) / 2 + stray * dice.about(0, 1))
        .to(topS, top)
        .to((downS + impactS) / 2, (top + impact) / 2 + stray * dice.about(0, 1))
        .to(impactS, impact);
  }
}
