package steadyturn.analysis.lab.family;

import org.apache.commons.math3.random.RandomGenerator;

/** Draws of the kinds that families are made of, one after another from one generator. */
public record Dice(RandomGenerator random) {

  /** Evenly from low to high. */
  public double even(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Evenly in the logarithm. */
  public double times(double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  /** Normal, cut at two and a half spreads. */
  public double about(double mean, double sd) {
    return mean + sd * Math.max(-2.5, Math.min(2.5, random.nextGaussian()));
  }

  /** Whether something of that probability happens. */
  public boolean happens(double probability) {
    return random.nextDouble() < probability;
  }

  /** One of several, each as likely. */
  @SafeVarargs
  public final <T> T one(T... of) {
    return of[random.nextInt(of.length)];
  }
}
