package steadyturn.fusion.wear.pelvis;

import java.util.OptionalDouble;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Player;

/**
 * Where mid-hip lies from the pelvis unit.
 *
 * <p>Hip-joint centres by Harrington, Zavatsky, Lawson, Yuan, Theologis 2007, J Biomech 40:595-602,
 * from pelvis depth PD and width PW in mm, seen from the middle of the front hip-bone points: 0.24
 * PD + 9.9 behind, 0.30 PW + 10.9 below, 0.33 PW + 7.3 to each side. The unit sits on the back
 * points, PD behind, plus 15 mm of skin and case (our assumption); where the depth was taken over
 * the worn unit too, that tells its place instead.
 *
 * @param midHipFromUnitPelvisM mid-hip relative to the unit, anatomical pelvis axes (x forward, y
 *     left, z up), m
 * @param sdM spread of each component, m
 */
public record LeverArm(Vector3 midHipFromUnitPelvisM, Vector3 sdM) {

  private static final double BEHIND_PER_DEPTH = 0.24;
  private static final double BELOW_PER_WIDTH = 0.30;
  private static final double SKIN_AND_CASE_MM = 15;

  /** From the outer face of a case to the chip in it (our assumption, within 3 mm). */
  private static final double FACE_TO_CHIP_MM = 6;

  /**
   * Spread along where the depth was taken over the worn unit, mm: 6 of the regression, 3 of the
   * chip in its case and 2 of the calliper remain (our assumption).
   */
  private static final double WORN_SD_MM = 7;

  /**
   * Spread of the unit's true place about the regression, mm: along, across, up (our assumption).
   */
  private static final Vector3 PLACING_SD_MM = new Vector3(10, 5, 10);

  /**
   * Pelvis width and depth as parts of stature, and their spread between people (our assumption).
   */
  private static final double WIDTH_PER_STATURE = 0.137;

  private static final double DEPTH_PER_STATURE = 0.086;
  private static final double WIDTH_SD_MM = 18;
  private static final double DEPTH_SD_MM = 15;
  private static final double USUAL_STATURE_MM = 1740;
  private static final double USUAL_STATURE_SD_MM = 95;

  /** From callipers where both sizes were taken, else from stature, else from a usual stature. */
  public static LeverArm of(Player player) {
    LeverArm bare = fromSkin(player);
    if (player.wornDepthMm().isEmpty()) {
      return bare;
    }
    double wornMm = player.wornDepthMm().getAsDouble() - FACE_TO_CHIP_MM;
    double depthMm = player.pelvisDepthMm().orElse(wornMm - SKIN_AND_CASE_MM);
    Vector3 arm = bare.midHipFromUnitPelvisM();
    double aheadM = 1e-3 * (wornMm - hipBehindFrontMm(depthMm));
    return new LeverArm(
        new Vector3(aheadM, arm.y(), arm.z()),
        new Vector3(1e-3 * WORN_SD_MM, bare.sdM().y(), bare.sdM().z()));
  }

  private static LeverArm fromSkin(Player player) {
    OptionalDouble stature = player.statureMm();
    double statureMm = stature.orElse(USUAL_STATURE_MM);
    double statureSdMm = stature.isPresent() ? 10 : USUAL_STATURE_SD_MM;
    return fromSizes(
        player.pelvisWidthMm().orElse(WIDTH_PER_STATURE * statureMm),
        pelvisDepthMm(player),
        player.pelvisWidthMm().isPresent()
            ? 0
            : Math.hypot(WIDTH_SD_MM, WIDTH_PER_STATURE * statureSdMm),
        player.pelvisDepthMm().isPresent()
            ? 0
            : Math.hypot(DEPTH_SD_MM, DEPTH_PER_STATURE * statureSdMm));
  }

  private static LeverArm fromSizes(
      double widthMm, double depthMm, double widthSdMm, double depthSdMm) {
    double aheadMm = depthMm - hipBehindFrontMm(depthMm) + SKIN_AND_CASE_MM;
    double belowMm = hipBelowFrontMm(widthMm);
    return new LeverArm(
        new Vector3(aheadMm, 0, -belowMm).times(1e-3),
        new Vector3(
                Math.hypot(PLACING_SD_MM.x(), (1 - BEHIND_PER_DEPTH) * depthSdMm),
                PLACING_SD_MM.y(),
                Math.hypot(PLACING_SD_MM.z(), BELOW_PER_WIDTH * widthSdMm))
            .times(1e-3));
  }

  /** Hip-joint centre behind the middle of the front hip-bone points, mm. */
  public static double hipBehindFrontMm(double pelvisDepthMm) {
    return BEHIND_PER_DEPTH * pelvisDepthMm + 9.9;
  }

  /** Hip-joint centre below the middle of the front hip-bone points, mm. */
  public static double hipBelowFrontMm(double pelvisWidthMm) {
    return BELOW_PER_WIDTH * pelvisWidthMm + 10.9;
  }

  /** Half the distance between the hip-joint centres, mm. */
  public static double hipHalfDistanceMm(double pelvisWidthMm) {
    return 0.33 * pelvisWidthMm + 7.3;
  }

  /** Pelvis width where it was taken, else as part of stature, mm. */
  public static double pelvisWidthMm(Player player) {
    return player
        .pelvisWidthMm()
        .orElse(WIDTH_PER_STATURE * player.statureMm().orElse(USUAL_STATURE_MM));
  }

  /** Pelvis depth where it was taken, else as part of stature, mm. */
  public static double pelvisDepthMm(Player player) {
    return player
        .pelvisDepthMm()
        .orElse(DEPTH_PER_STATURE * player.statureMm().orElse(USUAL_STATURE_MM));
  }
}
