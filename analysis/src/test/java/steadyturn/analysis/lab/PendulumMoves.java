package steadyturn.analysis.lab;

import java.util.List;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.lab.pendulum.PendulumNode;
import steadyturn.analysis.lab.pendulum.PendulumSwing;

/**
 * Lays lead arm and wrist of a pendulum's swing on the stage: a backswing that meets the pendulum's
 * start in value, rate and acceleration, the pendulum node by node, and a follow-through that takes
 * its rates over. The forearm is rolled by 90 deg from the top to impact, so that the cock lies in
 * the arm's plane.
 */
record PendulumMoves(
    Stage stage, SwingPlan plan, double startS, double topS, PendulumSwing pendulum) {

  private static final double QUARTER = Math.PI / 2;

  /** From impact to the end of the wrist's way. */
  private static final double EASE_S = 0.06;

  private static final double LONGEST_S = 0.6;

  void lay() {
    double impactS = topS + pendulum.impactS();
    List<PendulumNode> nodes = pendulum.nodes();
    PendulumNode first = nodes.get(0);
    PendulumNode last = nodes.get(nodes.size() - 1);
    Steps arm = stage.joint(Joint.ARM);
    Steps cock = stage.joint(Joint.COCK);
    arm.quintic(startS, topS, new double[] {arm.level(), 0, 0}, arm(first));
    cock.quintic(startS + 0.1, topS, new double[] {cock.level(), 0, 0}, cock(first));
    for (int i = 1; i < nodes.size(); i++) {
      PendulumNode a = nodes.get(i - 1);
      PendulumNode b = nodes.get(i);
      if (b.timeS() > a.timeS()) {
        arm.quintic(topS + a.timeS(), topS + b.timeS(), arm(a), arm(b));
        cock.quintic(topS + a.timeS(), topS + b.timeS(), cock(a), cock(b));
      }
    }
    armThrough(arm, last, impactS);
    cockThrough(cock, last, impactS);
    stage
        .joint(Joint.ROLL)
        .to(startS + 0.05, topS - 0.05, QUARTER)
        .to(impactS, impactS + 0.4, plan.rad(Trait.ROLL_FINISH_DEG));
    stage
        .joint(Joint.FLEXION)
        .to(startS + 0.1, topS, 0)
        .to(impactS, impactS + 0.4, plan.rad(Trait.FLEXION_ADDRESS_DEG));
  }

  private static double[] arm(PendulumNode n) {
    return new double[] {n.armRad(), n.armRateRadPerS(), n.armAccelRadPerS2()};
  }

  private static double[] cock(PendulumNode n) {
    return new double[] {n.cockRad(), n.cockRateRadPerS(), n.cockAccelRadPerS2()};
  }

  /** The wrist comes to its end and hands the club's momentum on to the arm, which runs out. */
  private void armThrough(Steps arm, PendulumNode last, double impactS) {
    double rate = pendulum.rateIfLockedRadPerS();
    double easedRad = last.armRad() + 0.5 * (last.armRateRadPerS() + rate) * EASE_S;
    double[] eased = {easedRad, rate, 0};
    double[] finish = {plan.rad(Trait.ARM_FINISH_DEG), 0, 0};
    // longer than 1.8 times way over rate, a quintic would turn back
    double lengthS = Math.min(LONGEST_S, 1.8 * (finish[0] - easedRad) / rate);
    arm.quintic(impactS, impactS + EASE_S, arm(last), eased);
    arm.quintic(impactS + EASE_S, impactS + EASE_S + lengthS, eased, finish);
  }

  private void cockThrough(Steps cock, PendulumNode last, double impactS) {
    double[] turned = {last.cockRad() + 0.5 * last.cockRateRadPerS() * EASE_S, 0, 0};
    double[] finish = {plan.rad(Trait.COCK_FINISH_DEG), 0, 0};
    cock.quintic(impactS, impactS + EASE_S, cock(last), turned);
    cock.quintic(impactS + EASE_S, impactS + LONGEST_S, turned, finish);
  }
}
