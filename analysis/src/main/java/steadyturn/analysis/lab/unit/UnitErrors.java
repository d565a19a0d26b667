package steadyturn.analysis.lab.unit;

import org.apache.commons.math3.random.RandomGenerator;

/**
 * The errors one simulated unit really has. A sensor shows {@code matrix * true + bias + noise};
 * the gyroscope also {@code gSensitivity * specific force}.
 *
 * @param gyroMatrix 1 + scale and misalignment, row by row
 * @param gyroBiasRadPerS bias at the start
 * @param gyroPerAccel rad/s per m/s^2, row by row
 * @param gyroWanderRadPerS standard deviation of the slow wander of the bias (100 s correlation)
 * @param gyroNoiseRadPerSRtHz white noise density
 * @param accelMatrix 1 + scale and misalignment, row by row
 * @param accelNoiseMps2RtHz white noise density
 * @param quantized whether values come in 16-bit steps of the full scale
 */
public record UnitErrors(
    double[][] gyroMatrix,
    double[] gyroBiasRadPerS,
    double[][] gyroPerAccel,
    double gyroWanderRadPerS,
    double gyroNoiseRadPerSRtHz,
    double[][] accelMatrix,
    double[] accelBiasMps2,
    double accelNoiseMps2RtHz,
    boolean quantized) {

  /** Standard gravity, m/s^2 (CGPM 1901): the lab's own, not that of the code it judges. */
  public static final double G_MPS2 = 9.80665;

  /** Flat part of an Allan deviation is 0.664 of the wander's spread (IEEE 952, from memory). */
  private static final double FLAT_OF_WANDER = 0.664;

  /** Draws the errors of one unit of a grade. */
  public static UnitErrors draw(UnitGrade grade, RandomGenerator random) {
    double rad = Math.PI / 180;
    double[][] gyroMatrix =
        matrix(random, grade.gyroScalePct, 0.01, grade.gyroMisalignmentDeg, rad, true);
    double[] gyroBias = vector(random, grade.gyroBiasDegPerS, rad);
    double[][] perAccel =
        matrix(
            random,
            grade.gyroDegPerSPerG,
            rad / G_MPS2,
            grade.gyroDegPerSPerG,
            rad / G_MPS2,
            false);
    double wander =
        Math.abs(grade.gyroInstabilityDegPerH.draw(random)) * rad / 3600 / FLAT_OF_WANDER;
    double gyroNoise = Math.abs(grade.gyroNoiseDegPerSRtHz.draw(random)) * rad;
    double[][] accelMatrix =
        matrix(random, grade.accelScalePct, 0.01, grade.accelMisalignmentDeg, rad, true);
    double[] accelBias = vector(random, grade.accelBiasMg, 1e-3 * G_MPS2);
    double accelNoise = Math.abs(grade.accelNoiseUgRtHz.draw(random)) * 1e-6 * G_MPS2;
    return new UnitErrors(
        gyroMatrix,
        gyroBias,
        perAccel,
        wander,
        gyroNoise,
        accelMatrix,
        accelBias,
        accelNoise,
        grade.quantized);
  }

  /** The same unit with its noise and its biases times as large. */
  public UnitErrors times(double noise, double bias) {
    return new UnitErrors(
        gyroMatrix,
        times(gyroBiasRadPerS, bias),
        gyroPerAccel,
        gyroWanderRadPerS * bias,
        gyroNoiseRadPerSRtHz * noise,
        accelMatrix,
        times(accelBiasMps2, bias),
        accelNoiseMps2RtHz * noise,
        quantized);
  }

  private static double[] times(double[] v, double factor) {
    return new double[] {factor * v[0], factor * v[1], factor * v[2]};
  }

  private static double[][] matrix(
      RandomGenerator random,
      Size diagonal,
      double diagonalUnit,
      Size rest,
      double restUnit,
      boolean plusIdentity) {
    double[][] m = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        m[i][j] = i == j ? diagonal.draw(random) * diagonalUnit : rest.draw(random) * restUnit;
      }
      m[i][i] += plusIdentity ? 1 : 0;
    }
    return m;
  }

  private static double[] vector(RandomGenerator random, Size size, double unit) {
    return new double[] {
      size.draw(random) * unit, size.draw(random) * unit, size.draw(random) * unit
    };
  }
}
