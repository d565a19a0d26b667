package steadyturn.fusion.wear.pelvis;

import java.util.OptionalDouble;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.ConstantsTable;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.wear.StillStep;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The numbers of this room against their sources, in constants.csv. */
class PelvisConstantsTest extends ConstantsTable {

  private static final LeverArm CALLIPERED =
      LeverArm.of(player(OptionalDouble.of(240), OptionalDouble.of(150), OptionalDouble.empty()));
  private static final LeverArm BY_STATURE =
      LeverArm.of(player(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(1000)));
  private static final LeverArm UNKNOWN = LeverArm.of(Player.unmeasured("p", Handedness.RIGHT));

  private static Player player(OptionalDouble width, OptionalDouble depth, OptionalDouble stature) {
    return new Player("p", Handedness.LEFT, width, depth, stature);
  }

  @Override
  protected double value(String id) {
    double[][] mounting = PelvisGeometry.nominal(CALLIPERED).covariance();
    return switch (id) {
      case "hip-behind-per-depth" -> LeverArm.hipBehindFrontMm(1) - LeverArm.hipBehindFrontMm(0);
      case "hip-behind-base" -> LeverArm.hipBehindFrontMm(0);
      case "hip-below-per-width" -> LeverArm.hipBelowFrontMm(1) - LeverArm.hipBelowFrontMm(0);
      case "hip-below-base" -> LeverArm.hipBelowFrontMm(0);
      case "hip-aside-per-width" -> LeverArm.hipHalfDistanceMm(1) - LeverArm.hipHalfDistanceMm(0);
      case "hip-aside-base" -> LeverArm.hipHalfDistanceMm(0);
      case "skin-and-case" -> 1000 * CALLIPERED.midHipFromUnitPelvisM().x() - 0.76 * 150 + 9.9;
      case "placing-sd-along" -> 1000 * CALLIPERED.sdM().x();
      case "placing-sd-across" -> 1000 * CALLIPERED.sdM().y();
      case "placing-sd-up" -> 1000 * CALLIPERED.sdM().z();
      case "width-per-stature" ->
          (-1000 * BY_STATURE.midHipFromUnitPelvisM().z() - 10.9) / 0.30 / 1000;
      case "depth-per-stature" ->
          (1000 * BY_STATURE.midHipFromUnitPelvisM().x() + 9.9 - 15) / 0.76 / 1000;
      case "usual-stature" ->
          LeverArm.pelvisWidthMm(Player.unmeasured("p", Handedness.RIGHT)) / 0.137;
      case "width-sd-by-stature" -> sizeSdMm(BY_STATURE.sdM().z(), 0.30);
      case "depth-sd-by-stature" -> sizeSdMm(BY_STATURE.sdM().x(), 0.76);
      case "width-sd-unknown" -> sizeSdMm(UNKNOWN.sdM().z(), 0.30);
      case "depth-sd-unknown" -> sizeSdMm(UNKNOWN.sdM().x(), 0.76);
      case "standing-tilt" -> Math.toDegrees(PelvisGeometry.STANDING_TILT_RAD);
      case "mounting-sd-about-forward" -> Math.toDegrees(Math.sqrt(mounting[0][0]));
      case "mounting-sd-about-left" -> Math.toDegrees(Math.sqrt(mounting[1][1]));
      case "mounting-sd-about-up" -> Math.toDegrees(Math.sqrt(mounting[2][2]));
      case "least-turn-on-the-spot" -> Math.toDegrees(TurnOnSpot.LEAST_TURN_RAD);
      case "aim-reach" -> AimCarry.REACH_S;
      case "aim-bias-sd" ->
          Math.toDegrees(AimCarry.of(still(3), 1).at(2).orElseThrow().biasSdRadPerS());
      default -> limit(id);
    };
  }

  private static double limit(String id) {
    UnitStream still = still(3);
    return switch (id) {
      case "table-limit" -> StillStep.table(still, 1, 2).result().limit();
      case "stance-limit" -> StillStep.stance(still, 1, 2, "aim").result().limit();
      case "bow-purity-limit" -> BowStep.of(still, new Vector3(1, 0, 0), 1, 2).result().limit();
      case "turn-each-way-limit" -> TurnStep.of(still, Vector3.ZERO, 1, 2).result().limit();
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }

  private static double sizeSdMm(double sdM, double perSize) {
    return Math.sqrt(1e6 * sdM * sdM - 100) / perSize;
  }

  private static UnitStream still(double lengthS) {
    return MadeUnit.of(
        UnitFacts.plain(BodyPoint.PELVIS, 100),
        lengthS,
        t -> Vector3.ZERO,
        t -> new Vector3(9.8, 0, 0));
  }
}
