package steadyturn.fusion.strapdown;

/**
 * One stretch that a pass steps over in a straight line, and how far the state behind it may be off
 * for that: three jumps of three axes each, which an estimate may find or leave as spread.
 *
 * @param after index of the first sample behind it
 * @param beforeS last good sample before it, s; of several slight ones, before the longest
 * @param afterS first good sample behind it, s
 * @param rotationSdRad spread of the turn about each level axis, rad
 * @param velocitySdMps spread of the velocity along each, m/s
 * @param placeSdM spread of the place along each, m
 */
public record Bridge(
    int after,
    double beforeS,
    double afterS,
    double rotationSdRad,
    double velocitySdMps,
    double placeSdM) {

  /** Numbers of a jump: turn, velocity, place. */
  public static final int SIZE = 9;

  /**
   * Turned by more than this, errors do not go by straight lines any more: the lever of a tilt has
   * lost a part in sixteen (our choice), rad.
   */
  private static final double BEYOND_RAD = Math.toRadians(20);

  /** Whether nothing behind it can be told from what lies before it. */
  public boolean isBeyond() {
    return rotationSdRad > BEYOND_RAD;
  }

  /** From good sample to good sample, s. */
  public double lengthS() {
    return afterS - beforeS;
  }

  /** Whether an instant lies inside it. */
  public boolean holds(double instantS) {
    return instantS > beforeS && instantS < afterS;
  }

  /** Spread of one of the nine numbers. */
  public double sd(int i) {
    return i < 3 ? rotationSdRad : i < 6 ? velocitySdMps : placeSdM;
  }
}
