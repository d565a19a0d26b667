package steadyturn.fusion.displace;

import steadyturn.fusion.rotation.Vector3;

/**
 * A weak knowledge of place: at an instant, the point carried by the unit is within a region around
 * where it was at the start, because the feet stay where they are. A fallback only: it pulls wide
 * movers towards the middle.
 *
 * @param fromS earlier instant, s on the recording's common axis
 * @param timeS instant, s on the recording's common axis
 * @param leverArmUnitM the carried point (mid-hip) relative to the unit, unit axes, m
 * @param expectedUnitM where it is expected to have gone, axes of the unit at the earlier instant,
 *     m
 * @param sdM spread of its place about there along each axis, m
 */
public record StanceBound(
    double fromS, double timeS, Vector3 leverArmUnitM, Vector3 expectedUnitM, double sdM) {

  /** Of a point that may have gone either way. */
  public StanceBound(double fromS, double timeS, Vector3 leverArmUnitM, double sdM) {
    this(fromS, timeS, leverArmUnitM, Vector3.ZERO, sdM);
  }

  public StanceBound {
    if (!(sdM > 0)) {
      throw new IllegalArgumentException("spread must be above 0 m, was " + sdM);
    }
  }
}
