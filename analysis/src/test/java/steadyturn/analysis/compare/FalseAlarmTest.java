package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the comparison says of players whose truth is known, five hundred times over. */
class FalseAlarmTest {

  private static final int RUNS = 500;

  @ParameterizedTest(name = "{0} and {1} swings, second spread x {2}, lessons apart {3}")
  @CsvSource({
    "3, 3, 1, false", "3, 10, 1, false", "3, 10, 0.25, false", "3, 10, 3, false",
    "4, 8, 0.33, false", "5, 5, 1, false", "5, 5, 3, false", "10, 10, 1, false",
    "10, 10, 2, false", "5, 5, 1, true", "10, 10, 1, true"
  })
  void noDifferenceIsCalledRealInAtMostFivePercent(
      int first, int second, double spread, boolean apart) {
    // Given: 500 comparisons of 10 rows each, no true difference. Expect: any row "real" in at
    // most 5 % of them. No tolerance: the level is the promise.
    long seed = 41_000 + 100L * first + second;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    int alarms = 0;
    for (int run = 0; run < RUNS; run++) {
      var player = new InventedPlayer(random, -45, -20);
      var lesson = player.lesson("monday");
      var a = player.group("7-iron", lesson, first, 1, 0);
      var b = player.group("driver", apart ? player.lesson("friday") : lesson, second, spread, 0);
      alarms += real(a, b) ? 1 : 0;
    }
    System.err.println("false real: " + alarms + " of " + RUNS);
    assertThat(alarms).isLessThanOrEqualTo(RUNS / 20);
  }

  @Test
  void threeClubsTogetherKeepTheSamePromise() {
    // Given: three groups, so 30 rows at once. Expect: any "real" in at most 5 %.
    long seed = 43;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    int alarms = 0;
    for (int run = 0; run < RUNS; run++) {
      var player = new InventedPlayer(random, -45, -20);
      var lesson = player.lesson("monday");
      var groups =
          List.of(
              player.group("wedge", lesson, 4, 1, 0),
              player.group("7-iron", lesson, 6, 1.5, 0),
              player.group("driver", lesson, 5, 2, 0));
      var rows = GroupComparison.compare(groups, MeasureAt.defaults()).rows();
      alarms += rows.stream().anyMatch(FalseAlarmTest::isReal) ? 1 : 0;
    }
    System.err.println("false real: " + alarms + " of " + RUNS);
    assertThat(alarms).isLessThanOrEqualTo(RUNS / 20);
  }

  @Test
  void verdictAndRangeNeverContradict() {
    // Given: 100 comparisons with and without a difference. Expect: "real" just where the printed
    // range leaves out zero, "within the margin" just where it lies in it.
    long seed = 48;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    for (int run = 0; run < 100; run++) {
      var player = new InventedPlayer(random, -45, -20);
      var lesson = player.lesson("monday");
      var a = player.group("7-iron", lesson, 5, 1, 0);
      var b = player.group("driver", lesson, 7, 0.5 + run % 3, run % 7);
      for (ComparisonRow row : rows(a, b)) {
        MeanDifference d = row.difference().orElseThrow();
        assertThat(isReal(row)).isEqualTo(d.low() > 0 || d.high() < 0);
        assertThat(isReal(row)).isEqualTo(row.adjustedChance() < 0.05);
        assertThat(isSame(row)).isEqualTo(d.low() > -row.margin() && d.high() < row.margin());
        assertThat(d.value()).isBetween(d.low(), d.high());
      }
    }
  }

  @Test
  void sixDegreesMoreTurnAreSeenInEightSwingsEach() {
    // Given: 6 deg more turn, spread 2 deg, 8 swings each. Expect: turn "real" in at least 95 % of
    // 300. A test that never alarms would pass the ones above; this one it would not.
    long seed = 44;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    int seen = 0;
    for (int run = 0; run < 300; run++) {
      var player = new InventedPlayer(random, -45, -20);
      var lesson = player.lesson("monday");
      var a = player.group("7-iron", lesson, 8, 1, 0);
      var b = player.group("driver", lesson, 8, 1, 6);
      seen += isReal(rows(a, b).get(0)) ? 1 : 0;
    }
    assertThat(seen).isGreaterThanOrEqualTo(285);
  }

  @Test
  void aDifferenceAtTheMarginIsCalledTheSameInAtMostFivePercent() {
    // Given: turn differs by exactly the margin of 2 deg, small spread. Expect: "same within 2 deg"
    // in at most 5 % of 500; two one-sided tests at 5 %.
    long seed = 45;
    System.err.println("seed " + seed);
    assertThat(same(new Random(seed), 0.5, 2.0, RUNS)).isLessThanOrEqualTo(RUNS / 20);
  }

  @Test
  void twoLikeClubsOfASteadyPlayerAreCalledTheSame() {
    // Given: no difference, half the usual spread, 10 swings each. Expect: turn at top the same
    // within 2 deg in at least 90 % of 200: the standard error is about 0.5 deg.
    long seed = 46;
    System.err.println("seed " + seed);
    assertThat(same(new Random(seed), 0.5, 0.0, 200)).isGreaterThanOrEqualTo(180);
  }

  private static int same(Random random, double spread, double moreDeg, int runs) {
    int same = 0;
    for (int run = 0; run < runs; run++) {
      var player = new InventedPlayer(random, -45, -20);
      var lesson = player.lesson("monday");
      var a = player.group("7-iron", lesson, 10, spread, 0);
      var b = player.group("driver", lesson, 10, spread, moreDeg);
      same += isSame(rows(a, b).get(0)) ? 1 : 0;
    }
    System.err.println("same within the margin: " + same + " of " + runs);
    return same;
  }

  private static boolean real(SwingGroup a, SwingGroup b) {
    return rows(a, b).stream().anyMatch(FalseAlarmTest::isReal);
  }

  private static List<ComparisonRow> rows(SwingGroup a, SwingGroup b) {
    return GroupComparison.compare(List.of(a, b), MeasureAt.defaults()).rows();
  }

  private static boolean isSame(ComparisonRow row) {
    return row.verdict() == ComparisonVerdict.SAME
        || row.verdict() == ComparisonVerdict.REAL_BUT_SMALL;
  }

  private static boolean isReal(ComparisonRow row) {
    return row.verdict() == ComparisonVerdict.REAL
        || row.verdict() == ComparisonVerdict.REAL_BUT_SMALL;
  }
}
