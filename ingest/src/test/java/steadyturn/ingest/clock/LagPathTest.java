package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

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
}
