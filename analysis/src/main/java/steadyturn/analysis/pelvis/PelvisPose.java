package steadyturn.analysis.pelvis;

/**
 * Where the pelvis is, free of handedness: turn, slide, thrust and lift since address; tilt and
 * side tilt against the level.
 *
 * @param turnRad turn of the hip line about the vertical, positive towards the target
 * @param slideM mid-hip along the target line, positive towards the target
 * @param thrustM mid-hip across it, positive towards the ball
 * @param liftM mid-hip upwards
 * @param tiltRad forward tilt
 * @param sideTiltRad lead hip up
 */
public record PelvisPose(
    double turnRad,
    double slideM,
    double thrustM,
    double liftM,
    double tiltRad,
    double sideTiltRad) {

  /** Number of components, in the order of the record. */
  public static final int SIZE = 6;

  public double[] toArray() {
    return new double[] {turnRad, slideM, thrustM, liftM, tiltRad, sideTiltRad};
  }

  static PelvisPose of(double[] a) {
    return new PelvisPose(a[0], a[1], a[2], a[3], a[4], a[5]);
  }
}
