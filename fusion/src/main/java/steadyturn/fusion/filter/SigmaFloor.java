package steadyturn.fusion.filter;

/**
 * Errors that no filter sees in its own samples and that its sigma must still show: the unit's axes
 * against its case and its accelerometer's bias, and the instant a sample stands for.
 *
 * @param alignmentRad one sigma per axis of the first, rad
 * @param timingS one sigma of the second, s: it counts with the rate
 */
public record SigmaFloor(double alignmentRad, double timingS) {

  public SigmaFloor {
    Setting.atLeast0("alignment rad and timing s", alignmentRad, timingS);
  }

  /**
   * 0.25 deg (4 mg) and 2.5 ms: our choice; with them 95 % limits hold 85 to 99 % of the moving
   * samples of each of five open recordings.
   */
  public static SigmaFloor standard() {
    return new SigmaFloor(Math.toRadians(0.25), 0.0025);
  }

  /** The same for a step of this length: the instant may lie anywhere in half of it. */
  public SigmaFloor forStep(double stepS) {
    return new SigmaFloor(alignmentRad, Math.max(timingS, 0.5 * stepS));
  }

  /** Variance per axis at a rate of this size, rad^2; a third of the rate falls on each axis. */
  public double variance(double rateX, double rateY, double rateZ) {
    double squared = rateX * rateX + rateY * rateY + rateZ * rateZ;
    return alignmentRad * alignmentRad + timingS * timingS * squared / 3;
  }
}
