package steadyturn.fusion.filter;

/**
 * Settings of the textbook complementary filter.
 *
 * @param tiltTimeS time constant with which the shown vertical follows the accelerometer, s
 * @param biasTimeS time constant with which the gyroscope bias is learnt from the same error, s
 */
public record ComplementarySettings(double tiltTimeS, double biasTimeS) {

  public ComplementarySettings {
    Setting.sizes("time constants, s,", tiltTimeS, biasTimeS);
  }

  /** 5 s and 200 s: our choice, slow enough for arm movement and for what a bias is. */
  public static ComplementarySettings standard() {
    return new ComplementarySettings(5, 200);
  }
}
