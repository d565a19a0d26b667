package steadyturn.analysis.pelvis;

import java.util.List;
import steadyturn.analysis.measure.Measure;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

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

  /** A pose from its components in degrees and millimetres, in the order of the record. */
  public static PelvisPose ofOutward(double[] a) {
    return new PelvisPose(
        Math.toRadians(a[0]),
        a[1] / 1e3,
        a[2] / 1e3,
        a[3] / 1e3,
        Math.toRadians(a[4]),
        Math.toRadians(a[5]));
  }

  /**
   * Attitude of the pelvis in ground axes; {@link PoseMath#pose} takes it apart again.
   *
   * @param h +1 right-handed, -1 left-handed
   * @param openRad how far the hips stood open to the target at address
   */
  public Quaternion qGroundPelvis(int h, double openRad) {
    double azimuthRad = (h > 0 ? 0 : Math.PI) + h * (openRad + turnRad);
    return Quaternion.aboutZ(azimuthRad - Math.PI / 2)
        .times(Quaternion.aboutX(h * sideTiltRad))
        .times(Quaternion.aboutY(tiltRad));
  }

  /** Mid-hip since address in ground axes, m. */
  public Vector3 midHipGroundM(int h) {
    return new Vector3(slideM, -h * thrustM, liftM);
  }

  public double[] toArray() {
    return new double[] {turnRad, slideM, thrustM, liftM, tiltRad, sideTiltRad};
  }

  static PelvisPose of(double[] a) {
    return new PelvisPose(a[0], a[1], a[2], a[3], a[4], a[5]);
  }
}
