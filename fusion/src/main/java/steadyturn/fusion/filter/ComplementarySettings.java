package steadyturn.fusion.filter;

import java.util.Locale;

/**
 * Settings of the textbook complementary filter.
 *
 * @param tiltTimeS time constant with which the shown vertical follows the accelerometer, s
 * @param biasTimeS time constant with which the gyroscope bias is learnt from the same error, s
 */
public record ComplementarySettings(double tiltTimeS, double biasTimeS) {

  public ComplementarySettings {
    if (!(tiltTimeS > 0 && biasTimeS > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "time constants must be above 0 s, were %s and %s",
              tiltTimeS,
              biasTimeS));
    }
  }

  /** 5 s and 200 s: our choice, slow enough for arm movement and for what a bias is. */
  public static ComplementarySettings standard() {
    return new ComplementarySettings(5, 200);
  }
}
