package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What counts as a surprise of a slow unit whose accelerometer ends at 16 g. */
class SparseShockTest {

  private static final double G = 9.80665;

  @ParameterizedTest
  @CsvSource({
    // a line goes on; a bend is a surprise of its size
    "10, 12, 14, 0",
    "10, 12, 15, 1",
    "10, 12, 8, 6",
    // cut off where the line would have gone to 17 g; reached at once from a line that ends at 12 g
    "11, 14, 16, 0",
    "-11, -14, -16, 0",
    "8, 10, 16, 4",
    // comes back as a swing does, by 5 g in a step; by 20 g a blow does
    "16, 16, 11, 0",
    "14, 16, 13, 0",
    "16, 16, -4, 20"
  })
  void aKinkOfTheFullScaleIsNoBlow(double first, double before, double now, double expected) {
    // Given: three samples of one axis, g, 5 ms apart, the others still. Expect: how far the third
    // lies off the line through the first two, and nothing where the full scale explains it. Within
    // 1e-9: rounding.
    double[][] force = {{first * G, before * G, now * G}, new double[3], new double[3]};
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", 200, 16 * G, Math.toRadians(2000), true);
    UnitStream stream =
        new UnitStream(facts, new double[] {0, 0.005, 0.010}, force, new double[3][3]);
    SparseShock shock = new SparseShock(GyroTrack.of(stream, Vector3.ZERO));
    assertThat(shock.surprises(2, 3)[0]).isCloseTo(expected * G, within(1e-9));
  }
}
