package steadyturn.analysis.lab.pendulum;

/**
 * How a pendulum is driven: from rest (or a given rate) with the wrist locked, then, from the
 * release angle on, with the wrist free or pushed. Angles in rad, 0 with the arm hanging, negative
 * on the way down; torques in N m, positive towards the ball.
 *
 * @param startArmRad arm at the start
 * @param cockRad angle between arm and club while locked
 * @param startRateRadPerS rate of both at the start
 * @param releaseArmRad arm angle at which the wrist is set free
 * @param lockedShoulderNm torque on the arm before
 * @param freeShoulderNm torque on the arm after
 * @param freeWristNm torque on the wrist after, uncocking
 * @param stopRad cock the wrist cannot exceed; infinite for none
 */
public record PendulumDrive(
    double startArmRad,
    double cockRad,
    double startRateRadPerS,
    double releaseArmRad,
    double lockedShoulderNm,
    double freeShoulderNm,
    double freeWristNm,
    double stopRad) {

  public PendulumDrive {
    if (!(releaseArmRad >= startArmRad)) {
      throw new IllegalArgumentException(
          "released at " + releaseArmRad + " rad, before the start at " + startArmRad + " rad");
    }
    if (!(stopRad >= cockRad)) {
      throw new IllegalArgumentException(
          "cocked to " + cockRad + " rad, beyond the stop at " + stopRad + " rad");
    }
  }

  /**
   * From rest 150 deg back with 90 deg of cock and 100 N m at the shoulder.
   *
   * @param releaseArmDeg arm angle of the release, such as -90
   */
  public static PendulumDrive fromTop(
      double releaseArmDeg, double freeShoulderNm, double freeWristNm) {
    return new PendulumDrive(
        Math.toRadians(-150),
        Math.toRadians(90),
        0,
        Math.toRadians(releaseArmDeg),
        100,
        freeShoulderNm,
        freeWristNm,
        Double.POSITIVE_INFINITY);
  }

  /** Let go early and pushed by the wrists: the angle is thrown away. */
  public static PendulumDrive cast() {
    return fromTop(-145, 100, 40);
  }

  /** Let go with the arm level. */
  public static PendulumDrive kept() {
    return fromTop(-90, 100, 40);
  }

  /** Let go 60 deg before the arm hangs. */
  public static PendulumDrive late() {
    return fromTop(-60, 100, 40);
  }

  /** The same with a stop of the wrist. */
  public PendulumDrive withStopDeg(double stopDeg) {
    return new PendulumDrive(
        startArmRad,
        cockRad,
        startRateRadPerS,
        releaseArmRad,
        lockedShoulderNm,
        freeShoulderNm,
        freeWristNm,
        Math.toRadians(stopDeg));
  }
}
