package steadyturn.analysis.compare;

import org.apache.commons.math3.distribution.TDistribution;

/**
 * The usual value of a player for one measure at one key position, in the measure's unit.
 *
 * @param count swings it rests on, 3 or more
 * @param mean mean of them
 * @param spread standard deviation between them, not under each swing's own measuring error
 */
public record Usual(MeasureAt what, int count, double mean, double spread) {

  public Usual {
    if (count < GroupComparison.FEWEST_SWINGS || !(spread >= 0)) {
      throw new IllegalArgumentException(
          "usual " + what.measure().id() + " from " + count + " swings, spread " + spread);
    }
  }

  /**
   * How far a value lies from the usual one, in the player's own spreads (z-distance); positive
   * above. Zero spread gives an infinite distance, or 0 on the mean itself.
   */
  public double distance(double value) {
    return value == mean ? 0 : (value - mean) / spread;
  }

  /** Half-width of the range that holds the next swing 19 times in 20: t s sqrt(1 + 1/n). */
  public double halfRangeOfNext() {
    double t = new TDistribution(count - 1).inverseCumulativeProbability(0.975);
    return t * spread * Math.sqrt(1 + 1.0 / count);
  }

  /** Whether a value lies outside that range. */
  public boolean unusual(double value) {
    return Math.abs(value - mean) > halfRangeOfNext();
  }
}
