package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A finish is held where it is seen to be held. */
class UnseenFinishTest {

  /** At 100 Hz: turning at 1 rad/s until 1 s, still from then on. */
  private static UnitStream stream() {
    int n = 300;
    double[] time = new double[n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = 0.01 * i;
      gyro[0][i] = i < 100 ? 1 : 0;
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 100), time, new double[3][n], gyro);
  }

  @Test
  void lostRatesAreNoStillness() {
    // Given: the rates of 0.3 to 0.8 s lost while the unit turned. Expect: the finish at 1 s all
    // the
    // same, 85 ms its spread. Within 15 ms: the last sample that still turns.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(1), 30, 80, Double.NaN);
    var found = Finish.find(lost, Vector3.ZERO, 0.1, 2.9).orElseThrow();
    assertThat(found.timeS()).isCloseTo(0.995, within(0.015));
    assertThat(found.sdS()).isCloseTo(0.085, within(1e-9));
  }

  @Test
  void aFinishThatBeginsUnseenMayHaveBegunAnywhereThere() {
    // Given: the rates of 0.7 to 1.2 s lost. Expect: the middle of the 0.51 s between the last
    // sample seen and the first one after, 0.945 s, with the spread of an even chance there, 0.51 s
    // over the root of 12, and the 85 ms of any finish: 0.170 s. The truth, 1 s, lies within it.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(0), 70, 120, Double.NaN);
    var found = Finish.find(lost, Vector3.ZERO, 0.1, 2.9).orElseThrow();
    assertThat(found.timeS()).isCloseTo(0.945, within(1e-9));
    assertThat(found.sdS()).isCloseTo(0.170, within(0.001));
  }

  @Test
  void nothingSeenIsNoFinish() {
    // Given: no rate at all from 0.9 s on. Expect: none.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(2), 90, 300, Double.NaN);
    assertThat(Finish.find(lost, Vector3.ZERO, 0.1, 2.9)).isEmpty();
  }
}
