package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Measure;

class BaselineTest {

  private static final MeasureAt TURN_AT_TOP = new MeasureAt(Measure.PELVIS_TURN, "top");

  @Test
  void theDistanceIsInThePlayersOwnSpreads() {
    // Given: usual turn -45, spread 2. Expect: -51 lies 3 spreads below. Within 1e-12: exact.
    var usual = new Usual(TURN_AT_TOP, 8, -45, 2);
    assertThat(usual.distance(-51)).isCloseTo(-3, within(1e-12));
    assertThat(usual.distance(-45)).isZero();
  }

  @Test
  void theNextSwingFallsOutsideTheUsualRangeOneTimeInTwenty() {
    // Given: 5 swings and a sixth of the same player, 20,000 times. Expect: 5 % outside.
    // Within 0.5 %: three standard errors of a share of 20,000.
    long seed = 51;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    int outside = 0;
    for (int run = 0; run < 20_000; run++) {
      double[] x = random.doubles(6).map(u -> random.nextGaussian()).toArray();
      double[] five = Arrays.copyOf(x, 5);
      double mean = Arrays.stream(five).average().orElseThrow();
      var usual = new Usual(TURN_AT_TOP, 5, mean, TypicalError.spread(five));
      outside += usual.unusual(x[5]) ? 1 : 0;
    }
    assertThat(outside / 20_000.0).isCloseTo(0.05, within(0.005));
  }

  @Test
  void aBaselineNeedsThreeSwings() {
    var player = new InventedPlayer(new Random(52), -45, -20);
    var lesson = player.lesson("monday");
    var two = Baseline.of(player.group("usual", lesson, 2, 1, 0), List.of(TURN_AT_TOP));
    var three = Baseline.of(player.group("usual", lesson, 3, 1, 0), List.of(TURN_AT_TOP));
    assertThat(two.usual(TURN_AT_TOP)).isEmpty();
    assertThat(three.usual(TURN_AT_TOP)).isPresent();
  }
}
