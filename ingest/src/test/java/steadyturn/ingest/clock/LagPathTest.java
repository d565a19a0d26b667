package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A path of lags, window by window of 4 s: the other's samples are each of one moment. */
class LagPathTest {

  /** Times and lags in turn, s. */
  private static LagPath path(double... timesAndLagsS) {
    return new LagPath(
        IntStream.range(0, timesAndLagsS.length / 2)
            .mapToObj(k -> new LagPath.Window(timesAndLagsS[2 * k], timesAndLagsS[2 * k + 1]))
            .toList());
  }

  private static List<Double> lagsS(LagPath path) {
    return path.windows().stream().map(LagPath.Window::lagS).toList();
  }

  @Test
  void aSwingThatTheOtherLostIsNotTheOneBefore() {
    // Given: swings at 44 and 52 s, the second lost by the other: it looks like the first, 8 s
    // earlier. Expect: the window that needs the other's samples of 44 s again is left out.
    LagPath seen = path(36, 0, 40, 0, 44, 0, 52, -8, 56, 0);
    assertThat(lagsS(seen.once())).isEqualTo(Arrays.asList(0.0, 0.0, 0.0, 0.0));
    assertThat(seen.once().pieces()).hasSize(1);
  }

  @Test
  void theShorterPieceGoesWhereverItLies() {
    // Given: the other lost its first swing, so that this one's first looks like its second.
    LagPath seen = path(44, 8, 52, 0, 56, 0, 60, 0);
    assertThat(lagsS(seen.once())).isEqualTo(Arrays.asList(0.0, 0.0, 0.0));
  }

  @Test
  void anOutageOfAnotherClockStaysAJump() {
    // Given: a clock that stood still for 8 s between 42 and 50 s: what comes at 52 follows what
    // came at 40. And one that ran ahead by 5 s.
    LagPath stood = path(36, 0, 40, 0, 52, -8, 56, -8);
    assertThat(stood.once()).isEqualTo(stood);
    // of 3.3 s between two windows, as found in a lesson with seed 2090: nothing is used twice
    LagPath between = path(113.8, -0.1, 117.8, -0.05, 121.8, -3.4, 125.8, -3.45);
    assertThat(between.once()).isEqualTo(between);
    LagPath ahead = path(36, 0, 40, 0, 44, 5, 48, 5);
    assertThat(ahead.once()).isEqualTo(ahead);
    assertThat(new LagPath(List.of()).once().windows()).isEmpty();
  }

  @Test
  void ofAJumpOnlyTheWindowsBesideItGiveWay() {
    // Given: a clock that stood still for 4.33 s, as found in a lesson with seed 3034, whose first
    // window after it needs samples from 0.23 s before those of the last one before. Expect: that
    // window of the shorter piece goes, the piece stays.
    LagPath seen =
        path(70.1, 0, 74.1, 0, 78.1, 0, 82.1, -4.25, 86.1, -4.3, 90.1, -4.35, 94.1, -4.35);
    assertThat(lagsS(seen.once())).isEqualTo(Arrays.asList(0.0, 0.0, -4.25, -4.3, -4.35, -4.35));
  }

  /**
   * One that turns about all axes for 1.5 s around each of some moments, alike each time.
   *
   * @param own what it turns by itself meanwhile, as a hand does on its wrist, rad/s; between
   *     swings either turns as it likes
   */
  private static UnitStream swinging(BodyPoint point, double own, double... atS) {
    int n = 4000;
    double[] timeS = IntStream.range(0, n).mapToDouble(i -> i / 100.0).toArray();
    double[][] rates = new double[3][n];
    for (int i = 0; i < n; i++) {
      rates[0][i] = 0.6 * Math.sin((own + 1) * timeS[i]);
      for (double at : atS) {
        double u = (timeS[i] - at) / 0.75;
        double bell = Math.abs(u) < 1 ? Math.pow(Math.cos(Math.PI * u / 2), 2) : 0;
        for (int axis = 0; axis < 3; axis++) {
          rates[axis][i] += bell * (8 * Math.sin((2 + 3 * axis) * u) + own * Math.cos(13 * u));
        }
      }
    }
    return new UnitStream(UnitFacts.plain(point, 100), timeS, new double[3][n], rates);
  }

  @Test
  void whichOfTwoSwingsAUnitSharesIsNotKnownWhereBothLookAlike() {
    // Given: one unit shows two swings, at 18 and 26 s; the other, its start unknown, shows one of
    // them, at 22 s. Expect: either may be the one, 8 s apart. As both show two, there is no rival.
    UnitStream two = swinging(BodyPoint.LEAD_FOREARM, 0, 18, 26);
    LagPath one = LagPath.of(two, swinging(BodyPoint.LEAD_HAND, 2, 22));
    assertThat(one.rivalS()).isCloseTo(8, within(0.15));
    LagPath both = LagPath.of(two, swinging(BodyPoint.LEAD_HAND, 2, 18, 26));
    assertThat(both.rivalS()).isZero();
    assertThat(both.mostS()).isZero();
  }
}
