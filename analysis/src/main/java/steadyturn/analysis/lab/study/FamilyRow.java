package steadyturn.analysis.lab.study;

/**
 * One cell of the judgement by families: a value at a key position.
 *
 * @param of how often it was asked for
 * @param withheldPct how often it was not given
 * @param rmse root of the mean squared error
 * @param halfWidth median half width of the 95 % intervals
 * @param coveragePct share of intervals that held the truth
 * @param worstSeed lesson whose error was largest beside its interval
 */
public record FamilyRow(
    String name,
    String unit,
    int of,
    double withheldPct,
    double rmse,
    double bias,
    double halfWidth,
    double coveragePct,
    long worstSeed) {

  /** Intervals shall hold at least so often. */
  public static final double LEAST_PCT = 90;

  /** And no more often than this: wider tells less than is known. */
  public static final double MOST_PCT = 99;

  /** Whether the share of intervals that hold is as it should be. */
  public boolean isHonest() {
    return coveragePct >= LEAST_PCT && coveragePct <= MOST_PCT;
  }

  /** How wide the intervals are beside the errors. */
  public double widthInErrors() {
    return halfWidth / rmse;
  }
}
