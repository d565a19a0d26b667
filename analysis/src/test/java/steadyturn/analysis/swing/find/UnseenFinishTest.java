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
    // same, 60 ms its spread. Within 15 ms: the last sample that still turns.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(1), 30, 80, Double.NaN);
    var found = Finish.find(lost, Vector3.ZERO, 0.1, 2.9).orElseThrow();
    assertThat(found.timeS()).isCloseTo(0.995, within(0.015));
    assertThat(found.sdS()).isCloseTo(0.06, within(1e-9));
  }

  @Test
  void aFinishThatBeginsUnseenMayHaveBegunAnywhereThere() {
    // Given: the rates of 0.7 to 1.2 s lost. Expect: found when they are back, at 1.2 s, with a
    // spread of half the gap, which holds the truth at 1 s. Within 70 ms, as 50 ms of a hold may go
    // unseen; 0.2 to 0.3 s.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(0), 70, 120, Double.NaN);
    var found = Finish.find(lost, Vector3.ZERO, 0.1, 2.9).orElseThrow();
    assertThat(found.timeS()).isCloseTo(1.2, within(0.07));
    assertThat(found.sdS()).isBetween(0.2, 0.3);
  }

  @Test
  void nothingSeenIsNoFinish() {
    // Given: no rate at all from 0.9 s on. Expect: none.
    UnitStream lost = stream();
    Arrays.fill(lost.gyroColumnRadPerS(2), 90, 300, Double.NaN);
    assertThat(Finish.find(lost, Vector3.ZERO, 0.1, 2.9)).isEmpty();
  }
}
