package steadyturn.analysis.lab.body;

import org.apache.commons.math3.random.RandomGenerator;

/**
 * How a trait varies: a player has a mean, each swing lies about it.
 *
 * @param mean centre of the players' means
 * @param playerSd spread of the players' means; infinite draws them evenly from low to high
 * @param swingSd spread of one player's swings
 * @param low smallest mean a player can have
 * @param high largest mean a player can have
 */
public record Variation(double mean, double playerSd, double swingSd, double low, double high) {

  public Variation {
    if (!(low <= mean && mean <= high) || !(playerSd >= 0) || !(swingSd >= 0)) {
      throw new IllegalArgumentException(
          "mean " + mean + " must lie in " + low + ".." + high + ", spreads must be 0 or more");
    }
  }

  /** Normal players' means, cut at two and a half spreads. */
  public static Variation about(double mean, double playerSd, double swingSd) {
    return new Variation(mean, playerSd, swingSd, mean - 2.5 * playerSd, mean + 2.5 * playerSd);
  }

  /** Players' means evenly from low to high. */
  public static Variation evenly(double low, double high, double swingSd) {
    return new Variation((low + high) / 2, Double.POSITIVE_INFINITY, swingSd, low, high);
  }

  /** The same with every swing alike and every player at the mean. */
  public Variation fixed() {
    return new Variation(mean, 0, 0, mean, mean);
  }

  /** Draws one player's mean. */
  public double drawPlayer(RandomGenerator random) {
    if (Double.isInfinite(playerSd)) {
      return low + (high - low) * random.nextDouble();
    }
    double drawn;
    do {
      drawn = mean + playerSd * random.nextGaussian();
    } while (drawn < low || drawn > high);
    return drawn;
  }
}
