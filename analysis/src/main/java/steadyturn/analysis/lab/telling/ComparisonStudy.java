package steadyturn.analysis.lab.telling;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.Drift;
import steadyturn.analysis.compare.FurtherBalls;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.HitOrder;
import steadyturn.analysis.compare.SwingGroup;

/**
 * Counts the promises of a comparison: how often clubs without a difference are called different,
 * how often the further balls it asks for do tell, what a drift over the session does.
 *
 * @param seed of the first comparison; each has its own
 */
public record ComparisonStudy(long seed) {

  /** Two single swings differ by less in 95 of 100 pairs: 1.96 sqrt 2 spreads. */
  private static final double DETECTABLE = 1.96 * Math.sqrt(2);

  /** More balls than this a session does not have. */
  private static final int SESSION = 60;

  /**
   * One promise.
   *
   * @param what which
   * @param kept comparisons of which it was counted
   * @param of comparisons in all
   * @param low least part that keeps the promise
   * @param high largest
   */
  public record Promise(String what, int kept, int of, double low, double high) {

    public double part() {
      return of == 0 ? Double.NaN : kept / (double) of;
    }

    public boolean isKept() {
      return part() >= low && part() <= high;
    }
  }

  /** All promises over so many comparisons each. */
  public List<Promise> run(int comparisons) {
    return List.of(
        none("two clubs, no difference: any \"real\"", comparisons, 2),
        none("three clubs, no difference: any \"real\"", comparisons, 3),
        further(comparisons),
        drift("balanced order, a drift of one detectable change: any \"real\"", comparisons, true),
        found("the same drift is told", comparisons));
  }

  private Random random(int purpose, int run) {
    return new Random(seed + 1_000_003L * purpose + run);
  }

  private Promise none(String what, int comparisons, int clubs) {
    int alarms = 0;
    for (int run = 0; run < comparisons; run++) {
      Random random = random(clubs, run);
      FittedPlayer player = new FittedPlayer(random);
      List<SwingGroup> groups = new ArrayList<>();
      for (int club = 0; club < clubs; club++) {
        int balls = 3 + random.nextInt(10);
        double factor = 0.6 + 1.2 * random.nextDouble();
        groups.add(
            player.group("club " + club, places(club, balls, clubs), factor, 0, 0, 0, balls));
      }
      alarms += anyReal(compare(groups)) ? 1 : 0;
    }
    return new Promise(what, alarms, comparisons, 0, 0.05);
  }

  private static List<Integer> places(int first, int balls, int step) {
    return IntStream.range(0, balls).mapToObj(i -> 1 + first + step * i).toList();
  }

  /** What is printed of a row is taken at its word: so many balls more, so large a difference. */
  private Promise further(int comparisons) {
    int told = 0;
    int tried = 0;
    for (int run = 0; run < comparisons; run++) {
      Random random = random(7, run);
      FittedPlayer player = new FittedPlayer(random);
      int balls = 4 + random.nextInt(5);
      int row = random.nextInt(FittedPlayer.LOOKS.size());
      ComparisonRow first = two(player, balls, row, 0).rows().get(row);
      Optional<FurtherBalls> more = first.further().filter(m -> m.balls().isPresent());
      if (more.isPresent() && more.get().balls().getAsInt() <= SESSION) {
        tried++;
        int all = balls + more.get().balls().getAsInt();
        ComparisonRow then = two(player, all, row, more.get().difference()).rows().get(row);
        told += isReal(then) ? 1 : 0;
      }
    }
    return new Promise(
        "the further balls printed tell the difference printed",
        told,
        tried,
        FurtherBalls.POWER - 0.1,
        FurtherBalls.POWER + 0.1);
  }

  private static Comparison two(FittedPlayer player, int balls, int row, double more) {
    return compare(
        List.of(
            player.group("a", places(0, balls, 2), 1, row, 0, 0, 2 * balls),
            player.group("b", places(1, balls, 2), 1, row, more, 0, 2 * balls)));
  }

  private Promise drift(String what, int comparisons, boolean balanced) {
    int alarms = 0;
    for (int run = 0; run < comparisons; run++) {
      alarms += anyReal(drifting(random(11, run), balanced)) ? 1 : 0;
    }
    return new Promise(what, alarms, comparisons, 0, 0.05);
  }

  private Promise found(String what, int comparisons) {
    int told = 0;
    for (int run = 0; run < comparisons; run++) {
      told +=
          drifting(random(13, run), true).rows().stream()
                  .anyMatch(row -> row.drift().filter(Drift::isSure).isPresent())
              ? 1
              : 0;
    }
    return new Promise(what, told, comparisons, 0.8, 1);
  }

  private static Comparison drifting(Random random, boolean balanced) {
    FittedPlayer player = new FittedPlayer(random);
    List<String> order = new ArrayList<>(HitOrder.of(List.of("a", "b"), 12).balls());
    if (!balanced) {
      order.sort(null);
    }
    List<SwingGroup> groups =
        List.of("a", "b").stream()
            .map(
                club ->
                    player.group(
                        club,
                        IntStream.range(0, order.size())
                            .filter(i -> order.get(i).equals(club))
                            .mapToObj(i -> i + 1)
                            .toList(),
                        1,
                        0,
                        0,
                        DETECTABLE,
                        order.size()))
            .toList();
    return compare(groups);
  }

  /** Any "real" where a drift meets clubs hit one after the other: what a balanced order is for. */
  public Promise inBlocks(int comparisons) {
    return drift("in blocks the same drift: any \"real\"", comparisons, false);
  }

  private static Comparison compare(List<SwingGroup> groups) {
    return GroupComparison.compare(groups, FittedPlayer.LOOKS);
  }

  private static boolean anyReal(Comparison comparison) {
    return comparison.rows().stream().anyMatch(ComparisonStudy::isReal);
  }

  private static boolean isReal(ComparisonRow row) {
    return row.verdict() == ComparisonVerdict.REAL
        || row.verdict() == ComparisonVerdict.REAL_BUT_SMALL;
  }
}
