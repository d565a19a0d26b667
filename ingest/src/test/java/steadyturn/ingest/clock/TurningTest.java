package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The sums that are shared by many lags, against their plain definitions. */
class TurningTest {

  private static TurnGrid grid(Random random, int steps) {
    double[][] rates = new double[3][steps];
    for (double[] axis : rates) {
      for (int i = 0; i < steps; i++) {
        axis[i] = (i / 60 % 3 == 0 ? 0.01 : 2) * random.nextGaussian();
      }
    }
    for (int i = 0; i < 4; i++) {
      rates[random.nextInt(3)][random.nextInt(steps)] = Double.NaN;
    }
    return new TurnGrid(0, 0.05, rates);
  }

  /** The part of the other's squares that a linear map of the unit's rates explains. */
  private static double plain(TurnGrid unit, TurnGrid other, int from, int to, int lag) {
    if (from + lag < 0 || to + lag > other.size()) {
      return Double.NaN;
    }
    double[][] own = new double[3][3];
    double[][] cross = new double[3][3];
    double others = 0;
    for (int i = from; i < to; i++) {
      for (int a = 0; a < 3; a++) {
        double theirs = other.rates()[a][i + lag];
        others += theirs * theirs;
        for (int b = 0; b < 3; b++) {
          own[a][b] += unit.rates()[a][i] * unit.rates()[b][i];
          cross[a][b] += theirs * unit.rates()[b][i];
        }
      }
    }
    double trace = own[0][0] + own[1][1] + own[2][2];
    double least = 0.2 * 0.2 * (to - from);
    if (!(trace > least && others > least)) {
      return Double.NaN;
    }
    double explained = 0;
    for (int axis = 0; axis < 3; axis++) {
      own[axis][axis] += 1e-3 * trace;
    }
    for (double[] row : cross) {
      for (int b = 0; b < 3; b++) { // Cramer's rule
        double[][] swapped = {own[0].clone(), own[1].clone(), own[2].clone()};
        for (int a = 0; a < 3; a++) {
          swapped[a][b] = row[a];
        }
        explained += row[b] * determinant(swapped) / determinant(own);
      }
    }
    return explained / others;
  }

  private static double determinant(double[][] m) {
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
        - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
        + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
  }

  @Test
  void whatIsSharedAtEachLagIsWhatALinearMapExplains() {
    // Given: random rates with still stretches and lost steps (seeds 1 to 5). Expect: the plain
    // definition by Cramer's rule at each lag, and no answer where it has none. Within 1e-9:
    // running
    // sums of 600 squares of size 4 lose 12 of 16 digits at most.
    for (int seed = 1; seed <= 5; seed++) {
      System.out.println("seed " + seed);
      Random random = new Random(seed);
      TurnGrid unit = grid(random, 600);
      TurnGrid other = grid(random, 600);
      Turning turning = new Turning(unit, other);
      int seen = 0;
      for (int from = 0; from + 40 <= 600; from += 55) {
        Turning.Span span = turning.span(from, from + 40);
        for (int lag = -70; lag <= 70; lag += 7) {
          double expected = plain(unit, other, from, from + 40, lag);
          double found = span.shared(lag);
          assertThat(Double.compare(turning.shared(from, from + 40, lag), found)).isZero();
          if (Double.isNaN(expected)) {
            assertThat(found).isNaN();
          } else {
            assertThat(found).isCloseTo(expected, within(1e-9));
            seen++;
          }
        }
      }
      assertThat(seen).isGreaterThan(30);
    }
  }

  @Test
  void aGridHoldsTheMeansOfStraightLines() {
    // Given: uneven samples of three random axes, a gap of 0.08 s (seed 6). Expect: in each step
    // the
    // integral of the broken line over the step, in 2,000 midpoints; nothing in the gap. Within
    // 2e-3: a midpoint rule of that many parts misses each of some five bends by a part in 1e4.
    System.out.println("seed 6");
    Random random = new Random(6);
    int n = 400;
    double[] time = new double[n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = (i == 0 ? 5 : time[i - 1]) + 0.005 + 0.005 * random.nextDouble();
      time[i] += i == 200 ? 0.08 : 0;
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = random.nextGaussian();
      }
    }
    UnitStream unit =
        new UnitStream(UnitFacts.plain(BodyPoint.LEAD_HAND, 133), time, new double[3][n], gyro);
    TurnGrid grid = TurnGrid.of(unit, 4.9, 8.5, 0.05);
    assertThat(grid.size()).isEqualTo(71);
    for (int k = 0; k < grid.size(); k++) {
      double fromS = 4.9 + 0.05 * k;
      boolean isSeen =
          fromS >= time[0]
              && fromS + 0.05 <= time[n - 1]
              && (fromS + 0.05 <= time[199] || fromS >= time[200]);
      for (int axis = 0; axis < 3; axis++) {
        if (isSeen) {
          assertThat(grid.rates()[axis][k])
              .isCloseTo(mean(time, gyro[axis], fromS, fromS + 0.05), within(2e-3));
        } else {
          assertThat(grid.rates()[axis][k]).isNaN();
        }
      }
    }
  }

  private static double mean(double[] time, double[] values, double fromS, double toS) {
    double sum = 0;
    for (int part = 0; part < 2000; part++) {
      double t = fromS + (toS - fromS) * (part + 0.5) / 2000;
      int after = 1;
      while (time[after] < t) {
        after++;
      }
      double share = (t - time[after - 1]) / (time[after] - time[after - 1]);
      sum += values[after - 1] + share * (values[after] - values[after - 1]);
    }
    return sum / 2000;
  }
}
