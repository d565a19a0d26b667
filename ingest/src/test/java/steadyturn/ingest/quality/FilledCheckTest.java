package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Channels of white noise on a slow wave, at 200 Hz, whole and drawn anew from every eighth sample;
 * seed 14.
 */
class FilledCheckTest {

  private static final int SAMPLES = 4000;
  private static final int EVERY = 8;

  private static double[] channel(int k, double noise) {
    Random random = new Random(14 + k);
    double[] out = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      out[i] =
          2 * Math.sin(2 * Math.PI * (0.7 + 0.1 * k) * i / 200) + noise * random.nextGaussian();
    }
    return out;
  }

  private static UnitStream unit(double noise, UnaryOperator<double[]> change) {
    double[] timeS = new double[SAMPLES];
    Arrays.setAll(timeS, i -> i / 200.0);
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int k = 0; k < 3; k++) {
      accel[k] = change.apply(channel(k, noise));
      gyro[k] = change.apply(channel(3 + k, noise));
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_HAND, 200), timeS, accel, gyro);
  }

  private static double[] each(double[] column, IntToDoubleFunction value) {
    double[] out = new double[column.length];
    Arrays.setAll(out, value);
    return out;
  }

  private static double[] held(double[] x) {
    return each(x, i -> x[i - i % EVERY]);
  }

  private static double[] lines(double[] x) {
    return each(
        x,
        i -> {
          int from = i - i % EVERY;
          int to = Math.min(x.length - 1, from + EVERY);
          return x[from] + (x[to] - x[from]) * (i - from) / EVERY;
        });
  }

  /** Cubic convolution (Keys 1981, IEEE Trans ASSP 29:1153-1160, a = -1/2; from memory). */
  private static double[] smooth(double[] x) {
    return each(
        x,
        i -> {
          int at = i - i % EVERY;
          double t = (double) (i - at) / EVERY;
          double[] p = new double[4];
          Arrays.setAll(p, k -> x[Math.max(0, Math.min(x.length - EVERY, at + (k - 1) * EVERY))]);
          return p[1]
              + t / 2 * (p[2] - p[0])
              + t * t / 2 * (2 * p[0] - 5 * p[1] + 4 * p[2] - p[3])
              + t * t * t / 2 * (3 * (p[1] - p[2]) + p[3] - p[0]);
        });
  }

  private static List<ReasonCode> said(UnitStream unit) {
    return FilledCheck.of(unit, 200).stream().map(f -> f.what().code()).toList();
  }

  @Test
  void whatASensorGaveIsNotCalled() {
    assertThat(said(unit(0.05, x -> x))).isEmpty();
  }

  @Test
  void heldAndStraightSamplesAreCounted() {
    // Expect: 7 of 8 samples are made, so 25 Hz are left; on lines 6 of 8 or 7 of 8 show no bend.
    assertThat(FilledCheck.of(unit(0.05, FilledCheckTest::held), 200))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.what().code()).isEqualTo(QualityReason.FILLED_UP);
              assertThat(f.what().args())
                  .hasEntrySatisfying(
                      "trueHz", hz -> assertThat((double) hz).isBetween(20.0, 30.0));
            });
    assertThat(said(unit(0.05, FilledCheckTest::lines))).containsExactly(QualityReason.FILLED_UP);
  }

  @Test
  void aSmoothDrawingIsCalledSmoothed() {
    assertThat(said(unit(0.05, FilledCheckTest::smooth))).containsExactly(QualityReason.SMOOTHED);
  }

  @ParameterizedTest
  @CsvSource({"0.12, false", "0.04, true"})
  void theFastPartOfAFewWindowsIsEnough(double noise, boolean isSmoothed) {
    // Given: a wave of 0.7 to 0.9 Hz and white noise. In a window of 0.24 s the wave spreads by up
    // to 0.75 (1 SD), at its turning points by some 0.15; a fourth difference lets 70/256 of white
    // noise through. So of the windows at turning points 0.27 * 0.04^2 / 0.15^2 = 2 % of the spread
    // is fast, over three axes that turn at other times less; the bound of 0.4 % lies between.
    // Held against the bound by the share itself: a hundredth of the noise is surely smooth.
    assertThat(said(unit(isSmoothed ? noise / 10 : noise, x -> x)))
        .isEqualTo(isSmoothed ? List.of(QualityReason.SMOOTHED) : List.of());
  }

  @Test
  void whatHasNoNoiseAtAllWasComputed() {
    // Given: the waves alone, and with a noise of 0.01 m/s^2 drawn smoothly.
    assertThat(said(unit(0, x -> x))).isEmpty();
    assertThat(said(unit(1e-2, FilledCheckTest::smooth))).containsExactly(QualityReason.SMOOTHED);
  }

  @Test
  void tooLittleIsNotJudged() {
    // Given: 19 windows of 0.24 s, then 21, of a smooth drawing.
    UnitStream smooth = unit(0.05, FilledCheckTest::smooth);
    assertThat(said(smooth.between(0, 19 * 0.24 + 0.05))).isEmpty();
    assertThat(said(smooth.between(0, 21 * 0.24 + 0.05))).containsExactly(QualityReason.SMOOTHED);
  }

  @Test
  void aRateTooSlowForFastChangesIsNotJudged() {
    // Given: 45 Hz: its samples lie two hundredths of a second apart.
    UnitStream u = unit(0.05, FilledCheckTest::smooth);
    assertThat(FilledCheck.of(u.withTimes(each(u.timeColumnS(), i -> i / 45.0)), 45)).isEmpty();
  }
}
