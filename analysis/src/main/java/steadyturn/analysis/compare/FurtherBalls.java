package steadyturn.analysis.compare;

import java.util.OptionalInt;

/**
 * How many more balls of each of two clubs it takes to tell a difference.
 *
 * @param difference the true difference that is to be told, in the measure's unit, no sign
 * @param power chance that it is then called real
 * @param balls more balls with each club; empty where {@link #MOST} would not do, as where the
 *     error that the groups share does not shrink with their number
 */
public record FurtherBalls(double difference, double power, OptionalInt balls) {

  /** A usual choice for the size of a study. */
  public static final double POWER = 0.8;

  /** More than a player hits in a day. */
  public static final int MOST = 200;

  /**
   * Plans further balls.
   *
   * <p>The player's true spread is not known: the power is averaged over what the few swings so far
   * leave open (chi-square with the degrees of freedom of the difference, Satterthwaite 1946, An
   * approximate distribution of estimates of variance components, Biometrics Bulletin 2:110-114;
   * from memory). Planning with the spread as found would keep the promise in under 8 of 10 cases.
   *
   * @param level chance of a false "real" that the row may spend
   */
  static FurtherBalls of(GroupSummary first, GroupSummary second, double difference, double level) {
    Plan plan = new Plan(first, second, difference, level);
    if (plan.power(MOST) < POWER) {
      return new FurtherBalls(difference, POWER, OptionalInt.empty());
    }
    int low = 0;
    int high = MOST;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (plan.power(middle) < POWER) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double seen = Math.min(plan.seen(first), plan.seen(second));
    return new FurtherBalls(difference, POWER, OptionalInt.of((int) Math.ceil(high / seen)));
  }

  private record Plan(GroupSummary first, GroupSummary second, double difference, double level) {

    /** The part of the swings that gave a value. */
    double seen(GroupSummary group) {
      return group.count() / (double) (group.count() + group.withheld());
    }

    double power(int more) {
      double known = MeanDifference.sharedVariance(first, second, ErrorSplit.defaults().leftover());
      GroupSummary a = first.withCount(first.count() + more);
      GroupSummary b = second.withCount(second.count() + more);
      double[][] open = TwoSpreads.inverseChi2(freedom());
      double power = 0;
      for (int k = 0; k < open[0].length; k++) {
        double trueOverFound = open[0][k];
        TwoSpreads spread =
            new TwoSpreads(
                trueOverFound * a.varianceOfMean(),
                a.count() - 1,
                trueOverFound * b.varianceOfMean(),
                b.count() - 1,
                known);
        power += open[1][k] * spread.upperTail(spread.upperQuantile(level / 2) - difference);
      }
      return power;
    }

    private int freedom() {
      double a = first.varianceOfMean();
      double b = second.varianceOfMean();
      double squares = a * a / (first.count() - 1) + b * b / (second.count() - 1);
      return squares == 0 ? 1 : Math.max(1, (int) Math.round((a + b) * (a + b) / squares));
    }
  }
}
