package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class CommonGridTest {

  /** Times 0, 10, 20, 60, 70 ms; every value is 100 times its time. */
  private static UnitStream withGap() {
    double[] timeS = {0, 0.01, 0.02, 0.06, 0.07};
    double[][] values = new double[3][5];
    for (double[] column : values) {
      for (int i = 0; i < 5; i++) {
        column[i] = 100 * timeS[i];
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 100), timeS, values, values);
  }

  @Test
  void aStraightLineStaysAStraightLineAndTheGapStaysMarked() {
    UnitStream even = CommonGrid.resample(withGap(), -0.005, 200, 17, 0.03);
    assertThat(even.size()).isEqualTo(17);
    for (int k = 0; k < 17; k++) {
      double t = -0.005 + k / 200.0;
      boolean isMeasured = (t > -1e-9 && t < 0.02 + 1e-9) || (t > 0.06 - 1e-9 && t < 0.07 + 1e-9);
      if (isMeasured) {
        // Within 1e-9: a straight line between two numbers of order 1 rounds at 1e-16.
        assertThat(even.accelMps2(0, k)).isCloseTo(100 * t, within(1e-9));
        assertThat(even.gyroRadPerS(2, k)).isCloseTo(100 * t, within(1e-9));
      } else {
        assertThat(even.accelMps2(1, k)).isNaN();
      }
    }
  }

  @Test
  void anEmptyStreamGivesAGridOfMissingValues() {
    UnitStream empty = withGap().between(5, 6);
    assertThat(CommonGrid.resample(empty, 0, 100, 3, 1).accelMps2(0, 1)).isNaN();
  }
}
