package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Compares every group with every later one. All rows are looked at together: the chance of any
 * false "real" in the whole comparison is held at {@code level} by Holm's steps (Holm 1979, A
 * simple sequentially rejective multiple test procedure, Scand J Stat 6:65-70; from memory), which
 * hold for any dependence between the measures.
 *
 * @param level chance of a false "real" in a comparison without any difference
 */
public record GroupComparison(Margins margins, ErrorSplit split, double level) {

  /** Fewest swings with a value from which a spread is taken. */
  public static final int FEWEST_SWINGS = 3;

  private static final double EQUIVALENCE_LEVEL = 0.05;

  public static GroupComparison withDefaults() {
    return new GroupComparison(Margins.defaults(), ErrorSplit.defaults(), 0.05);
  }

  /** Compares groups of two or more on the measures asked for. */
  public Comparison compare(List<SwingGroup> groups, List<MeasureAt> looks) {
    if (groups.size() < 2 || looks.isEmpty()) {
      throw new IllegalArgumentException(
          "needs two groups and a measure, got " + groups.size() + " and " + looks.size());
    }
    List<Look> all = looks.stream().map(what -> look(groups, what)).toList();
    List<ComparisonRow> open = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      for (int j = i + 1; j < groups.size(); j++) {
        open.addAll(pair(groups.size(), i, j, all));
      }
    }
    return new Comparison(
        groups.stream().map(SwingGroup::name).toList(), judge(open), Notices.of(groups));
  }

  /** One measure over all groups, in their order. */
  private record Look(
      MeasureAt what, List<GroupSummary> groups, Optional<TypicalError> typicalError) {}

  private Look look(List<SwingGroup> groups, MeasureAt what) {
    List<GroupSummary> all = groups.stream().map(g -> GroupSummary.of(g, what, split)).toList();
    return new Look(what, all, TypicalError.pooled(all));
  }

  private List<ComparisonRow> pair(int groups, int i, int j, List<Look> looks) {
    double pairs = groups * (groups - 1) / 2.0;
    double levelOfRow = level / (pairs * looks.size());
    return looks.stream()
        .map(
            look ->
                open(
                    look.what(),
                    look.groups().get(i),
                    look.groups().get(j),
                    levelOfRow,
                    look.typicalError()))
        .toList();
  }

  private ComparisonRow open(
      MeasureAt what,
      GroupSummary first,
      GroupSummary second,
      double levelOfRow,
      Optional<TypicalError> typical) {
    double margin = margins.of(what.measure());
    boolean enough = first.count() >= FEWEST_SWINGS && second.count() >= FEWEST_SWINGS;
    Optional<MeanDifference> difference =
        enough
            ? Optional.of(MeanDifference.of(first, second, split.leftover(), margin, levelOfRow))
            : Optional.empty();
    return new ComparisonRow(
        what, first, second, difference, 1, margin, typical, ComparisonVerdict.TOO_FEW_SWINGS);
  }

  /** Holm: the k-th smallest of m chances is multiplied by m - k + 1 and never falls again. */
  private List<ComparisonRow> judge(List<ComparisonRow> open) {
    List<Integer> order = new ArrayList<>();
    for (int k = 0; k < open.size(); k++) {
      if (open.get(k).difference().isPresent()) {
        order.add(k);
      }
    }
    order.sort(Comparator.comparingDouble(k -> chance(open.get(k))));
    List<ComparisonRow> judged = new ArrayList<>(open);
    double floor = 0;
    for (int step = 0; step < order.size(); step++) {
      ComparisonRow row = open.get(order.get(step));
      floor = Math.max(floor, Math.min(1, (order.size() - step) * chance(row)));
      judged.set(order.get(step), judged(row, floor));
    }
    return judged;
  }

  private ComparisonRow judged(ComparisonRow row, double adjustedChance) {
    boolean within = row.difference().orElseThrow().beyondMargin() < EQUIVALENCE_LEVEL;
    return new ComparisonRow(
        row.what(),
        row.first(),
        row.second(),
        row.difference(),
        adjustedChance,
        row.margin(),
        row.typicalError(),
        ComparisonVerdict.of(adjustedChance < level, within));
  }

  private static double chance(ComparisonRow row) {
    return row.difference().map(MeanDifference::chance).orElse(1.0);
  }
}
