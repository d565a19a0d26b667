package steadyturn.analysis.lab;

import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.curve.Steps;

/** Lays the wear steps on the stage, in the order of {@link WearStep}, each with its mark. */
final class WearSteps {

  private static final double TABLE_S = 2.8;
  private static final double PUT_ON_S = 4;

  private final Stage stage;
  private final LessonSpec spec;
  private final double standingTiltRad;
  private final double aimRad;
  private final RandomGenerator random;
  private final RandomGenerator pose;

  /** 1 for a person, 0 where the body is to be without error. */
  private final double human;

  WearSteps(Stage stage, LessonSpec spec, double standingTiltRad, double aimRad, long seed) {
    this.stage = stage;
    this.spec = spec;
    this.standingTiltRad = standingTiltRad;
    this.aimRad = aimRad;
    this.random = Draws.of(seed, "wear", 0);
    this.pose = Draws.of(seed, "pose", 0);
    this.human = spec.body().swayAddressMmPerS() > 0 ? 1 : 0;
  }

  /** True time at which the units leave the table; they are worn 4 s later. */
  static double tableEndS() {
    return TABLE_S;
  }

  static double wornS() {
    return TABLE_S + PUT_ON_S;
  }

  void lay() {
    if (has(WearStep.TABLE_REST)) {
      stage.mark(0.6, TABLE_S - 0.1, WearStep.TABLE_REST.word(), "");
      stage.nowS = wornS();
    }
    stage.swayOfAddress(stage.nowS, stage.nowS + 1);
    stage.nowS += 1.2;
    still(WearStep.AIM, Joint.TURN, aimStepRad());
    stage.joint(Joint.TURN).to(stage.nowS, stage.nowS + 0.5, aimRad);
    stage.nowS += 0.5;
    double sideTiltRad = standingSideTiltRad();
    if (has(WearStep.QUIET_STANCE)) {
      stage.joint(Joint.SIDE_TILT).to(stage.nowS, stage.nowS + 0.6, sideTiltRad);
      still(WearStep.QUIET_STANCE, Joint.TILT, standingTiltRad);
      stage.joint(Joint.SIDE_TILT).to(stage.nowS, stage.nowS + 0.3, 0);
    }
    bow();
    neutralWrist();
    cocking();
    turnOnSpot();
  }

  private boolean has(WearStep step) {
    return spec.wearSteps().contains(step);
  }

  /** With the hips against a stick the aim is twice as good as a player's own: our assumption. */
  private double aimStepRad() {
    return Math.toRadians(spec.body().aimDeg() / 2) * random.nextGaussian();
  }

  /** A standing pelvis is not level from side to side either: 1.3 deg, our assumption. */
  private double standingSideTiltRad() {
    return Math.toRadians(0.26 * spec.body().standingTiltDeg()) * pose.nextGaussian();
  }

  private void still(WearStep step, Joint joint, double target) {
    if (has(step)) {
      double fromS = stage.nowS;
      stage.joint(joint).to(fromS, fromS + 0.6, target);
      stage.mark(fromS + 0.8, fromS + 2.8, step.word(), "");
      stage.nowS = fromS + 3;
    }
  }

  /** Two bows of about 35 deg from the hips, the back straight. */
  private void bow() {
    double aside = Math.toRadians(1.5) * random.nextGaussian() * human;
    double around = Math.toRadians(1.5) * random.nextGaussian() * human;
    if (!has(WearStep.BOW)) {
      return;
    }
    double fromS = stage.nowS + 0.3;
    double bend = Math.toRadians(35);
    for (int i = 0; i < 2; i++) {
      double atS = fromS + 2.6 * i;
      thereAndBack(Joint.TILT, atS, 1.3, bend);
      thereAndBack(Joint.PLACE_Y, atS, 1.3, 0.10);
      thereAndBack(Joint.PLACE_Z, atS, 1.3, -0.03);
      thereAndBack(Joint.SIDE_TILT, atS, 1.3, aside);
      thereAndBack(Joint.TURN, atS, 1.3, around);
    }
    stage.mark(fromS - 0.2, fromS + 5.4, WearStep.BOW.word(), "");
    stage.nowS = fromS + 5.6;
  }

  private void thereAndBack(Joint joint, double fromS, double eachS, double change) {
    Steps steps = stage.joint(joint);
    steps.by(fromS, fromS + eachS, change).by(fromS + eachS, fromS + 2 * eachS, -change);
  }

  /** Arm hanging to within 1.5 deg, wrist straight to within 2 deg, each way. */
  private void neutralWrist() {
    double aside = Math.toRadians(1.5) * pose.nextGaussian() * human;
    double along = Math.toRadians(1.5) * pose.nextGaussian() * human;
    double flexion = Math.toRadians(2) * random.nextGaussian() * human;
    double cock = Math.toRadians(2) * random.nextGaussian() * human;
    if (!has(WearStep.NEUTRAL_WRIST)) {
      return;
    }
    double fromS = stage.nowS;
    stage.joint(Joint.FLEXION).to(fromS, fromS + 0.6, flexion);
    stage.joint(Joint.COCK).to(fromS, fromS + 0.6, cock);
    stage.joint(Joint.PLANE).to(fromS, fromS + 0.6, aside);
    stage.joint(Joint.ARM).to(fromS, fromS + 0.6, along);
    stage.mark(fromS + 0.8, fromS + 2.8, WearStep.NEUTRAL_WRIST.word(), "");
    stage.nowS = fromS + 3;
  }

  /** Three times up and down with the wrist alone; a tenth of it slips into flexion. */
  private void cocking() {
    double slip = 0.1 * random.nextGaussian() * human;
    if (!has(WearStep.COCKING)) {
      return;
    }
    double fromS = stage.nowS + 0.3;
    double atS = fromS;
    double[] targets = {22, -22, 22, -22, 22, 0};
    for (double target : targets) {
      double rad = Math.toRadians(target);
      stage.joint(Joint.COCK).to(atS, atS + 0.7, rad);
      stage.joint(Joint.FLEXION).to(atS, atS + 0.7, slip * rad);
      atS += 0.7;
    }
    stage.mark(fromS - 0.2, atS + 0.2, WearStep.COCKING.word(), "");
    stage.nowS = atS + 0.4;
  }

  /** Slowly left and right on the feet; mid-hip keeps its place to within 8 mm. */
  private void turnOnSpot() {
    double strayX = 0.008 * random.nextGaussian() * human;
    double strayY = 0.008 * random.nextGaussian() * human;
    if (!has(WearStep.TURN_ON_SPOT)) {
      return;
    }
    double fromS = stage.nowS + 0.5;
    double[] targets = {-35, 35, -35, 35, 0};
    double atS = fromS;
    for (double target : targets) {
      double eachS = target == 0 ? 1 : 1.8;
      stage.joint(Joint.TURN).to(atS, atS + eachS, aimRad + Math.toRadians(target));
      stage.joint(Joint.PLACE_X).to(atS, atS + eachS, strayX * Math.signum(target));
      stage.joint(Joint.PLACE_Y).to(atS, atS + eachS, strayY * Math.abs(target) / 35);
      atS += eachS;
    }
    stage.mark(fromS - 0.3, atS + 0.2, WearStep.TURN_ON_SPOT.word(), "");
    stage.nowS = atS + 0.8;
  }
}
