package steadyturn.analysis.lab.unit;

import org.apache.commons.math3.random.RandomGenerator;

/**
 * How large an error is: either normal with a standard deviation, or of a size between two bounds
 * with a random sign.
 */
public record Size(double low, double high, boolean normal) {

  public static final Size NONE = sd(0);

  /** Normal with standard deviation {@code sd}. */
  public static Size sd(double sd) {
    return new Size(0, sd, true);
  }

  /** Evenly between {@code low} and {@code high}, either sign. */
  public static Size between(double low, double high) {
    return new Size(low, high, false);
  }

  /** Draws one value. Always takes two numbers from the generator, so that draws stay in step. */
  double draw(RandomGenerator random) {
    double gauss = random.nextGaussian();
    double even = random.nextDouble();
    return normal ? high * gauss : Math.copySign(low + (high - low) * even, gauss);
  }
}
