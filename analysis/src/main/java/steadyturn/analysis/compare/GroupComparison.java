package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Compares every group with every later one. All rows are looked at together: the chance of any
 * false "real" in the whole comparison is held at 5 % by {@link Holm}'s steps, which hold for any
 * dependence between the measures. The range of a row comes from the same steps: it leaves out zero
 * just where the row is real.
 */
public final class GroupComparison {

  /** Fewest swings with a value from which a spread is taken. */
  public static final int FEWEST_SWINGS = 3;

  /** Chance of a false "real" in a comparison without any difference. */
  private static final double LEVEL = 0.05;

  private static final double LEFTOVER = ErrorSplit.defaults().leftover();

  private GroupComparison() {}

  /** Compares groups of two or more on the measures asked for. */
  public static Comparison compare(List<SwingGroup> groups, List<MeasureAt> looks) {
    if (groups.size() < 2 || looks.isEmpty()) {
      throw new IllegalArgumentException(
          "needs two groups and a measure, got " + groups.size() + " and " + looks.size());
    }
    List<Look> all =
        looks.stream().map(what -> Look.of(groups, what, LEVEL / looks.size())).toList();
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
      MeasureAt what,
      List<SwingGroup> swings,
      List<GroupSummary> groups,
      Optional<TypicalError> typicalError,
      Optional<Drift> drift) {

    static Look of(List<SwingGroup> groups, MeasureAt what, double level) {
      List<GroupSummary> all =
          groups.stream().map(g -> GroupSummary.of(g, what, ErrorSplit.defaults())).toList();
      return new Look(what, groups, all, TypicalError.pooled(all), Drift.of(groups, what, level));
    }

    ComparisonRow open(int i, int j, double levelOfRow) {
      GroupSummary a = groups.get(i);
      GroupSummary b = groups.get(j);
      double margin = Margins.of(what.measure());
      Optional<MeanDifference> difference =
          a.count() >= FEWEST_SWINGS && b.count() >= FEWEST_SWINGS
              ? Optional.of(MeanDifference.of(a, b, LEFTOVER, margin, levelOfRow))
              : Optional.empty();
      return new ComparisonRow(
          what,
          a,
          b,
          difference,
          1,
          margin,
          typicalError,
          ComparisonVerdict.TOO_FEW_SWINGS,
          levelOfRow,
          drift.map(d -> d.between(swings.get(i), swings.get(j), swings)));
    }
  }

  private static List<ComparisonRow> judge(List<ComparisonRow> open) {
    List<Integer> told =
        IntStream.range(0, open.size())
            .filter(k -> open.get(k).difference().isPresent())
            .boxed()
            .toList();
    List<Double> chances =
        told.stream().map(k -> open.get(k).difference().orElseThrow().chance()).toList();
    List<Holm> steps = Holm.steps(chances, LEVEL);
    List<ComparisonRow> judged = new ArrayList<>(open);
    for (int k = 0; k < told.size(); k++) {
      judged.set(told.get(k), judged(open.get(told.get(k)), steps.get(k)));
    }
    return judged;
  }

  private static ComparisonRow judged(ComparisonRow row, Holm step) {
    MeanDifference found = row.difference().orElseThrow();
    MeanDifference told =
        step.chance() < LEVEL
            ? found.ofRealRow(row.first(), row.second(), LEFTOVER, step.level())
            : found.ofOpenRow(row.first(), row.second(), LEFTOVER, step.level());
    return new ComparisonRow(
        row.what(),
        row.first(),
        row.second(),
        Optional.of(told),
        step.chance(),
        row.margin(),
        row.typicalError(),
        ComparisonVerdict.of(told, row.margin()),
        row.level(),
        row.drift());
  }
}
