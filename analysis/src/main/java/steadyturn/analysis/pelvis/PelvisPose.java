package steadyturn.analysis.pelvis;

import java.util.List;
import steadyturn.analysis.measure.Measure;

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

  /** What each component is called, in that order. */
  static final List<Measure> MEASURES =
      List.of(
          Measure.PELVIS_TURN,
          Measure.PELVIS_SLIDE,
          Measure.PELVIS_THRUST,
          Measure.PELVIS_LIFT,
          Measure.PELVIS_TILT,
          Measure.PELVIS_SIDETILT);

  /** Whether a component is an angle, not a place. */
  static boolean isAngle(int component) {
    return component == 0 || component >= 4;
  }

  /** A component, or its spread, in degrees or millimetres. */
  static double outward(int component, double value) {
    return isAngle(component) ? Math.toDegrees(value) : 1e3 * value;
  }

  public double[] toArray() {
    return new double[] {turnRad, slideM, thrustM, liftM, tiltRad, sideTiltRad};
  }

  static PelvisPose of(double[] a) {
    return new PelvisPose(a[0], a[1], a[2], a[3], a[4], a[5]);
  }
}
