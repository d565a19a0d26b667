package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Compares every group with every later one. All rows are looked at together: the chance of any
 * false "real" in the whole comparison is held at 5 % by Holm's steps (Holm 1979, A simple
 * sequentially rejective multiple test procedure, Scand J Stat 6:65-70; from memory), which hold
 * for any dependence between the measures.
 */
public final class GroupComparison {

  /** Fewest swings with a value from which a spread is taken. */
  public static final int FEWEST_SWINGS = 3;

  private static final double EQUIVALENCE_LEVEL = 0.05;

  /** Chance of a false "real" in a comparison without any difference. */
  private static final double LEVEL = 0.05;

  private GroupComparison() {}

  /** Compares groups of two or more on the measures asked for. */
  public static Comparison compare(List<SwingGroup> groups, List<MeasureAt> looks) {
    if (groups.size() < 2 || looks.isEmpty()) {
      throw new IllegalArgumentException(
          "needs two groups and a measure, got " + groups.size() + " and " + looks.size());
    }
    List<Look> all = looks.stream().map(what -> Look.of(groups, what)).toList();
    double pairs = groups.size() * (groups.size() - 1) / 2.0;
    double levelOfRow = LEVEL / (pairs * looks.size());
    int n = groups.size();
    List<ComparisonRow> open =
        IntStream.range(0, n * n)
            .filter(pair -> pair / n < pair % n)
            .parallel()
            .boxed()
            .flatMap(pair -> all.stream().map(l -> l.open(pair / n, pair % n, levelOfRow)))
            .toList();
    return new Comparison(
        groups.stream().map(SwingGroup::name).toList(), judge(open), Notices.of(groups));
  }

  /** One measure over all groups, in their order. */
  private record Look(
      MeasureAt what, List<GroupSummary> groups, Optional<TypicalError> typicalError) {

    static Look of(List<SwingGroup> groups, MeasureAt what) {
      List<GroupSummary> all =
          groups.stream().map(g -> GroupSummary.of(g, what, ErrorSplit.defaults())).toList();
      return new Look(what, all, TypicalError.pooled(all));
    }

    ComparisonRow open(int i, int j, double levelOfRow) {
      GroupSummary a = groups.get(i);
      GroupSummary b = groups.get(j);
      double margin = Margins.of(what.measure());
      double leftover = ErrorSplit.defaults().leftover();
      Optional<MeanDifference> difference =
          a.count() >= FEWEST_SWINGS && b.count() >= FEWEST_SWINGS
              ? Optional.of(MeanDifference.of(a, b, leftover, margin, levelOfRow))
              : Optional.empty();
      return new ComparisonRow(
          what, a, b, difference, 1, margin, typicalError, ComparisonVerdict.TOO_FEW_SWINGS);
    }
  }

  /** Holm: the k-th smallest of m chances is multiplied by m - k + 1 and never falls again. */
  private static List<ComparisonRow> judge(List<ComparisonRow> open) {
    List<Integer> order =
        IntStream.range(0, open.size())
            .filter(k -> open.get(k).difference().isPresent())
            .boxed()
            .sorted(Comparator.comparingDouble(k -> chance(open.get(k))))
            .toList();
    List<ComparisonRow> judged = new ArrayList<>(open);
    double floor = 0;
    for (int step = 0; step < order.size(); step++) {
      ComparisonRow row = open.get(order.get(step));
      floor = Math.max(floor, Math.min(1, (order.size() - step) * chance(row)));
      judged.set(order.get(step), judged(row, floor));
    }
    return judged;
  }

  private static ComparisonRow judged(ComparisonRow row, double adjustedChance) {
    boolean within = row.difference().orElseThrow().beyondMargin() < EQUIVALENCE_LEVEL;
    return new ComparisonRow(
        row.what(),
        row.first(),
        row.second(),
        row.difference(),
        adjustedChance,
        row.margin(),
        row.typicalError(),
        ComparisonVerdict.of(adjustedChance < LEVEL, within));
  }

  private static double chance(ComparisonRow row) {
    return row.difference().map(MeanDifference::chance).orElse(1.0);
  }
}
