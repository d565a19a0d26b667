package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What was not seen was not still. */
class UnseenRestTest {

  private static UnitStream still() {
    int n = 400;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / 200.0;
      accel[2][i] = 9.8;
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 200), time, accel, new double[3][n]);
  }

  private static boolean isRest(UnitStream stream) {
    return new RestGate(RestSettings.address()).before(stream, Vector3.ZERO, 0, 1.9).isPresent();
  }

  @Test
  void aStillStretchWithOneSampleInFiveIsARestAndOneWithAHoleIsNot() {
    // Given: 2 s still at 200 Hz; then with 4 of 5 samples lost (20 ms between those left); then
    // with one hole of 80 ms every 0.3 s. Expect: rest, rest, none of 0.7 s: 50 ms may go unseen.
    assertThat(isRest(still())).isTrue();
    UnitStream thin = still();
    for (int i = 0; i < 400; i++) {
      thin.gyroColumnRadPerS(1)[i] = i % 5 == 0 ? 0 : Double.NaN;
    }
    assertThat(isRest(thin)).isTrue();
    UnitStream holed = still();
    for (int from = 20; from < 380; from += 60) {
      Arrays.fill(holed.accelColumnMps2(0), from, from + 16, Double.NaN);
    }
    assertThat(isRest(holed)).isFalse();
  }

  @Test
  void whereNothingWasSeenThereIsNoRest() {
    // Given: the same 2 s with one axis lost throughout. Expect: no rest, infinite rate.
    UnitStream lost = still();
    Arrays.fill(lost.gyroColumnRadPerS(2), Double.NaN);
    assertThat(isRest(lost)).isFalse();
    assertThat(RestGate.rateRmsRadPerS(lost, Vector3.ZERO, 0.5, 1)).isInfinite();
    assertThat(RestGate.isSeen(lost, 0.5, 1)).isFalse();
  }
}
