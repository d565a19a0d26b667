package steadyturn.fusion.calibrate;

/**
 * Size of gravity, m/s^2. By latitude after Somigliana's formula with the constants of WGS-84 (NIMA
 * TR8350.2), with the height above the ellipsoid to second order; good to about 0.0005 m/s^2, as
 * rock and valleys are left out.
 */
public final class Gravity {

  private static final double EQUATOR_MPS2 = 9.7803253359;
  private static final double SOMIGLIANA_K = 0.001931853;
  private static final double ECCENTRICITY_SQUARED = 0.00669438;
  private static final double SEMI_MAJOR_M = 6378137.0;
  private static final double FLATTENING = 1 / 298.257223563;
  private static final double CENTRIFUGAL_RATIO = 0.00344978650684;

  private Gravity() {}

  /** At this latitude (deg) and height (m). */
  public static double atMps2(double latitudeDeg, double heightM) {
    if (!(Math.abs(latitudeDeg) <= 90)) {
      throw new IllegalArgumentException("latitude is -90 to 90 deg, was " + latitudeDeg);
    }
    double sine = Math.sin(Math.toRadians(latitudeDeg));
    double s = sine * sine;
    double onEllipsoid =
        EQUATOR_MPS2 * (1 + SOMIGLIANA_K * s) / Math.sqrt(1 - ECCENTRICITY_SQUARED * s);
    double perM = 2 / SEMI_MAJOR_M * (1 + FLATTENING + CENTRIFUGAL_RATIO - 2 * FLATTENING * s);
    double h = heightM / SEMI_MAJOR_M;
    return onEllipsoid * (1 - perM * heightM + 3 * h * h);
  }
}
