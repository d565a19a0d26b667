package steadyturn.fusion.wear.pelvis;

import steadyturn.fusion.rotation.Quaternion;

/**
 * The pelvis unit at the aim step and again at an address, seen in one unbroken run of its gyro, so
 * that the way the hips have turned in between is known without a compass.
 *
 * @param qEarthUnitAiming unit to earth (z up, heading arbitrary) with the hips against the stick
 * @param qEarthUnitAddress unit to the same earth at the address
 * @param sinceS time between the two, s
 * @param biasSdRadPerS spread of the gyro's bias about the vertical all that time
 * @param turnedRad all turning about the vertical in between, both ways together, rad
 */
public record AimSight(
    Quaternion qEarthUnitAiming,
    Quaternion qEarthUnitAddress,
    double sinceS,
    double biasSdRadPerS,
    double turnedRad) {

  /**
   * Turn of the hip line from the aim step to the address about the vertical, rad in (-pi, pi].
   *
   * @param qUnitPelvis how the unit sits
   */
  public double hipsTurnedRad(Quaternion qUnitPelvis) {
    double turned =
        qEarthUnitAddress.times(qUnitPelvis).azimuthOfYRad()
            - qEarthUnitAiming.times(qUnitPelvis).azimuthOfYRad();
    return Math.IEEEremainder(turned, 2 * Math.PI);
  }
}
