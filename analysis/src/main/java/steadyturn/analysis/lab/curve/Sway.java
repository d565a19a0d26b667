package steadyturn.analysis.lab.curve;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * Random drifting to and fro as a standing person does it: the rate is noise correlated over about
 * 0.3 s with a stated RMS, the value stays bounded, and a quintic spline through it makes four
 * derivatives continuous. Rate by a first-order autoregression (correlation time 0.3 s), value by
 * its integral pulled back to zero over 1.5 s (our assumption).
 */
public final class Sway {

  private static final double KNOT_S = 0.08;
  private static final double CORRELATION_S = 0.3;
  private static final double PULL_BACK_S = 1.5;

  // Uniform quintic B-spline: piece polynomials in u of the six coefficients around, times 120.
  private static final double[][] BASIS = {
    {1, -5, 10, -10, 5, -1},
    {26, -50, 20, 20, -20, 5},
    {66, 0, -60, 0, 30, -10},
    {26, 50, 20, -20, -20, 10},
    {1, 5, 10, 10, 5, -5},
    {0, 0, 0, 0, 0, 1}
  };

  private static final double RATE_GAIN = rateOfUnitNoise();

  private Sway() {}

  /**
   * Draws one course of sway.
   *
   * @param fromS start; before it the value keeps still
   * @param toS end
   * @param rmsRate RMS of the rate wanted at each instant; changes should take a second or more
   */
  public static TimeFunction draw(
      RandomGenerator random, double fromS, double toS, DoubleUnaryOperator rmsRate) {
    int knots = (int) Math.ceil((toS - fromS) / KNOT_S) + 6;
    double[] white = new double[knots];
    for (int i = 0; i < knots; i++) {
      white[i] = random.nextGaussian();
    }
    return spline(filter(white, fromS, rmsRate), fromS);
  }

  private static double[] filter(double[] white, double fromS, DoubleUnaryOperator rmsRate) {
    double keepRate = Math.exp(-KNOT_S / CORRELATION_S);
    double keepValue = Math.exp(-KNOT_S / PULL_BACK_S);
    double[] value = new double[white.length];
    double rate = 0;
    for (int i = 3; i < white.length; i++) {
      rate = keepRate * rate + white[i];
      double wanted = rmsRate.applyAsDouble(fromS + (i - 2) * KNOT_S);
      value[i] = keepValue * value[i - 1] + wanted / RATE_GAIN * rate * KNOT_S;
    }
    return value;
  }

  private static TimeFunction spline(double[] c, double fromS) {
    int pieces = c.length - 5;
    double[][] local = new double[pieces][6];
    for (int j = 0; j < pieces; j++) {
      for (int b = 0; b < 6; b++) {
        double power = 120;
        for (int k = 0; k < 6; k++) {
          local[j][k] += BASIS[b][k] * c[j + b] / power;
          power *= KNOT_S;
        }
      }
    }
    return (timeS, vra) -> {
      double x = (timeS - fromS) / KNOT_S;
      if (x >= 0) {
        int j = Math.min(pieces - 1, (int) x);
        double u = x >= pieces ? KNOT_S : timeS - fromS - j * KNOT_S;
        PiecewisePolynomial.addPolynomial(local[j], u, vra);
      }
    };
  }

  /** RMS rate of the spline when white noise of unit size goes in: from its impulse response. */
  private static double rateOfUnitNoise() {
    double[] impulse = new double[600];
    impulse[3] = 1;
    double keepRate = Math.exp(-KNOT_S / CORRELATION_S);
    double keepValue = Math.exp(-KNOT_S / PULL_BACK_S);
    double[] value = new double[impulse.length];
    double rate = 0;
    for (int i = 3; i < impulse.length; i++) {
      rate = keepRate * rate + impulse[i];
      value[i] = keepValue * value[i - 1] + rate * KNOT_S;
    }
    TimeFunction response = spline(value, 0);
    int perKnot = 4;
    double sum = 0;
    for (int i = 0; i < perKnot * 594; i++) {
      double r = response.rateAt((i + 0.5) * KNOT_S / perKnot);
      sum += r * r;
    }
    return Math.sqrt(sum / perKnot);
  }
}
