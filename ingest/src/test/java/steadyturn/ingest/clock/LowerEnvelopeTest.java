package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Delays are at least those of a line; the line under all points is looked for. */
class LowerEnvelopeTest {

  private static LowerEnvelope of(double... timeAndDelay) {
    LowerEnvelope envelope = new LowerEnvelope(1);
    for (int i = 0; i < timeAndDelay.length; i += 2) {
      envelope.add(timeAndDelay[i], timeAndDelay[i + 1]);
    }
    return envelope;
  }

  @Test
  void theLineLiesUnderAllPointsAndTouchesTwo() {
    // Given: points at 0, 2, 4, 6, 8 s with delays 3, 2, 5, 1.5, 4. Lower hull: (0,3) (2,2)
    // (6,1.5) (8,4). Mean time 4 s lies over the edge from 2 to 6 s: slope -1/8, 2.25 at 0.
    double[] line = of(0, 3, 2, 2, 4, 5, 6, 1.5, 8, 4).line();
    assertThat(line).containsExactly(new double[] {2.25, -0.125}, within(1e-12));
  }

  @Test
  void theEdgeIsThatOverTheMeanTime() {
    // Given: the same hull, but most points late: mean time 6.5 s, over the edge from 6 to 8 s.
    double[] line = of(0, 3, 2, 2, 6, 1.5, 7, 9, 8, 4, 9, 9, 10, 9).line();
    // hull (0,3) (2,2) (6,1.5) (8,4) (10,9); mean 6: the edge that ends at or after it, 2 to 6.
    assertThat(line).containsExactly(new double[] {2.25, -0.125}, within(1e-12));
    double[] later = of(0, 3, 2, 2, 6, 1.5, 7, 9, 8, 4, 9, 9, 10, 9, 11, 14).line();
    assertThat(later[1]).isCloseTo(1.25, within(1e-12));
    assertThat(later[0]).isCloseTo(1.5 - 6 * 1.25, within(1e-12));
  }

  @Test
  void inOneSecondOnlyTheLeastDelayCounts() {
    LowerEnvelope envelope = of(0.1, 5, 0.5, 2, 0.9, 3, 1.0, 7, 1.99, 6, 2.0, 4);
    assertThat(envelope.size()).isEqualTo(3);
    assertThat(envelope.spanS()).isCloseTo(1.5, within(1e-12));
    assertThat(envelope.least(0)).isEqualTo(2);
    assertThat(envelope.line()[1]).isCloseTo((4.0 - 2) / 1.5, within(1e-12));
  }

  @Test
  void oneStretchHasNoSlopeAndNoneHasNothing() {
    assertThat(of(0.5, 2, 0.6, 1.5).line()).containsExactly(1.5, 0);
    assertThat(of().line()).containsExactly(0, 0);
    assertThat(of().spanS()).isZero();
    assertThat(of().least(0)).isZero();
    assertThat(of().medianAboveS(new double[] {0, 0})).isNaN();
    assertThat(of(3, 2).spanS()).isZero();
  }

  @Test
  void theMedianHeightAboveALine() {
    // Given: heights 1, 2, 5 above 10 + 0.5 t. Expect: 2.
    assertThat(of(0, 11, 2, 13, 4, 17).medianAboveS(new double[] {10, 0.5}))
        .isCloseTo(2, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(ints = {400, 512, 513, 1500, 20_000})
  void howeverLongTheLineIsFoundInTheSameMemory(int seconds) {
    // Given: least delay 20 ms, the clock 50 ppm slow, latencies of 0 to 9 ms (seed 20260405),
    // every
    // tenth second none. Expect: the line, within 1 us and 0.01 ppm of 400 s and more: points lie
    // on it.
    Random random = new Random(20_260_405);
    LowerEnvelope envelope = new LowerEnvelope(1);
    for (int t = 0; t < seconds; t++) {
      double latencyS = t % 10 == 0 ? 0 : 0.009 * random.nextDouble();
      envelope.add(t, 0.020 + 50e-6 * t + latencyS);
    }
    assertThat(envelope.size()).isBetween(Math.min(seconds, 256), 512);
    assertThat(envelope.line()[0]).isCloseTo(0.020, within(1e-6));
    assertThat(1e6 * envelope.line()[1]).isCloseTo(50, within(0.01));
  }

  @Test
  void joinedStretchesKeepTheirLeastPointWithItsTime() {
    // Given: 513 seconds, the odd ones with less delay, so stretches are joined two by two. Expect:
    // 257 stretches, the least of each kept, and the first at 1 s.
    LowerEnvelope envelope = new LowerEnvelope(1);
    for (int t = 0; t < 513; t++) {
      envelope.add(t, t % 2 == 1 ? 1 : 2);
    }
    assertThat(envelope.size()).isEqualTo(257);
    assertThat(envelope.spanS()).isEqualTo(511);
    assertThat(envelope.medianAboveS(new double[] {1, 0})).isZero();
  }
}
