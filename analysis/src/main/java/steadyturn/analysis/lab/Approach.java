package steadyturn.analysis.lab;

import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.curve.Bursts;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.BodyPoint;

/** Lays the way from one swing to the next address on the stage, walking or not. */
record Approach(
    Stage stage,
    LessonSpec spec,
    Map<Trait, Double> player,
    double playerAimRad,
    double standingTiltRad,
    RandomGenerator random) {

  /** From a finish to the next address where the player does not walk. */
  private static final double GAP_S = 3;

  /** Mid-hip over the ground of a standing player. */
  static final double HIP_HEIGHT_M = 0.95;

  private static final double ADDRESS_BEND = Math.toRadians(20);
  private static final double ADDRESS_CHEST_BEND = Math.toRadians(15);

  /** From wherever the player is to the stance; {@code stage.nowS} is when it is taken. */
  void goToAddress(boolean first) {
    double fromS = stage.nowS;
    double toS;
    if (spec.walking()) {
      toS = walk(fromS);
    } else {
      toS = fromS + (first ? 2 : GAP_S);
    }
    double stepS = Math.min(2, 0.8 * (toS - fromS));
    if (!spec.walking() && !spec.finishHeld()) {
      takeStance(fromS, fromS + Math.min(1.6, stepS));
    } else {
      takeStance(toS - stepS, toS);
    }
    stage.nowS = toS;
  }

  /** Off and back: a round of 5 to 8 s that ends upright over the ball. */
  private double walk(double fromS) {
    double lengthS = 5 + 3 * random.nextDouble();
    double turn = Math.toRadians(70 + 80 * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
    double halfS = fromS + 0.45 * lengthS;
    double backS = fromS + 0.8 * lengthS;
    upright(fromS, fromS + 1.2);
    stage.joint(Joint.HEADING).by(fromS + 0.3, halfS, turn).by(halfS, backS, -turn);
    double awayM = 0.5 + 0.6 * random.nextDouble();
    stage.joint(Joint.PLACE_Y).by(fromS + 0.5, halfS, awayM).by(halfS, backS, -awayM);
    double stepsS = backS - fromS;
    stage.burst(Joint.PLACE_Z).add(fromS, stepsS, 0.012, 1.8, 0, Bursts.Window.SMOOTH);
    stage.burst(Joint.PLACE_X).add(fromS, stepsS, 0.02, 0.9, 1, Bursts.Window.SMOOTH);
    stage.burst(Joint.ARM).add(fromS, stepsS, 0.25, 0.9, 2, Bursts.Window.SMOOTH);
    stage.burst(Joint.TURN).add(fromS, stepsS, 0.08, 0.9, 3, Bursts.Window.SMOOTH);
    double loud = spec.body().swayAddressMmPerS() > 0 ? 1 : 0;
    stage.sway(fromS, fromS + 1, 30 * loud, 5 * loud);
    return fromS + lengthS;
  }

  /** Upright with the arms hanging, as between swings. */
  void upright(double fromS, double toS) {
    stage.joint(Joint.TURN).to(fromS, toS, playerAimRad);
    stage.joint(Joint.SIDE_TILT).to(fromS, toS, 0);
    stage.joint(Joint.TILT).to(fromS, toS, standingTiltRad);
    stage.joint(Joint.TRUNK_TURN).to(fromS, toS, 0);
    stage.joint(Joint.TRUNK_BEND).to(fromS, toS, 0);
    stage.joint(Joint.PLANE).to(fromS, toS, 0);
    stage.joint(Joint.ARM).to(fromS, toS, 0);
    stage.joint(Joint.ROLL).to(fromS, toS, 0);
    stage.joint(Joint.COCK).to(fromS, toS, 0);
    stage.joint(Joint.FLEXION).to(fromS, toS, 0);
    relaxSkin(fromS, toS);
  }

  private void relaxSkin(double fromS, double toS) {
    for (BodyPoint point : BodyPoint.values()) {
      for (Steps shift : stage.skin(point)) {
        shift.to(fromS, toS, 0);
      }
    }
  }

  private void takeStance(double fromS, double toS) {
    double aim = playerAimRad + Math.toRadians(spec.body().aimDeg() / 2) * random.nextGaussian();
    stage.joint(Joint.TURN).to(fromS, toS, aim);
    stage.joint(Joint.SIDE_TILT).to(fromS, toS, Math.toRadians(0.7) * random.nextGaussian());
    stage
        .joint(Joint.TILT)
        .to(fromS, toS, standingTiltRad + ADDRESS_BEND + 0.02 * random.nextGaussian());
    stage.joint(Joint.PLACE_X).to(fromS, toS, 0.02 * random.nextGaussian());
    stage.joint(Joint.PLACE_Y).to(fromS, toS, 0.06 + 0.02 * random.nextGaussian());
    stage.joint(Joint.PLACE_Z).to(fromS, toS, HIP_HEIGHT_M - 0.05);
    stage.joint(Joint.TRUNK_TURN).to(fromS, toS, 0);
    stage.joint(Joint.TRUNK_BEND).to(fromS, toS, ADDRESS_CHEST_BEND);
    SwingPlan usual = new SwingPlan(SwingKind.HIT, "", player);
    stage
        .joint(Joint.PLANE)
        .to(fromS, toS, usual.rad(Trait.PLANE_ADDRESS_DEG) + 0.01 * random.nextGaussian());
    stage.joint(Joint.ARM).to(fromS, toS, usual.rad(Trait.ARM_ADDRESS_DEG));
    stage.joint(Joint.ROLL).to(fromS, toS, 0);
    stage.joint(Joint.COCK).to(fromS, toS, usual.rad(Trait.COCK_ADDRESS_DEG));
    stage.joint(Joint.FLEXION).to(fromS, toS, usual.rad(Trait.FLEXION_ADDRESS_DEG));
    relaxSkin(fromS, toS);
    stage.swayOfAddress(toS - 0.8 * (toS - fromS), toS);
  }
}
