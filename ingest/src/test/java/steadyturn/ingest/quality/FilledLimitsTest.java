package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Streams that are made so that the shares {@link FilledCheck} looks at are exact, to either side
 * of each limit (our choices). At 200 Hz, where a window is 48 samples and begins at sample 1.
 */
class FilledLimitsTest {

  private static final int WINDOW = 48;

  private static UnitStream unit(int samples, IntToDoubleFunction accel, IntToDoubleFunction gyro) {
    double[] timeS = new double[samples];
    double[] force = new double[samples];
    double[] rate = new double[samples];
    Arrays.setAll(timeS, i -> i / 200.0);
    Arrays.setAll(force, accel);
    Arrays.setAll(rate, gyro);
    return new UnitStream(
        UnitFacts.plain(BodyPoint.LEAD_HAND, 200),
        timeS,
        new double[][] {force, force, force},
        new double[][] {rate, rate, rate});
  }

  /**
   * Every channel jumps from one side to the other with each of the first so many samples of a
   * window, and stands still in the rest but for so much of a jump, up and down.
   */
  private static UnitStream jumping(int samples, int news, double degPerS, double little) {
    double[] sides = new double[samples];
    double side = 1;
    for (int i = 1; i < samples; i++) {
      side = (i - 1) % WINDOW < news ? -side : side;
      sides[i] = side + (i % 2) * 2 * little;
    }
    double each = Math.toRadians(degPerS) / Math.sqrt(3);
    return unit(samples, i -> 3 * sides[i], i -> each * sides[i]);
  }

  private static List<ReasonCode> said(UnitStream unit) {
    return FilledCheck.of(unit, 200).stream().map(f -> f.what().code()).toList();
  }

  private static List<QualityReason> filled(boolean isFilled) {
    return isFilled ? List.of(QualityReason.FILLED_UP) : List.of();
  }

  @ParameterizedTest
  @CsvSource({"26, true", "27, false"})
  void aStreamIsFilledFromFortyFivePercent(int news, boolean isFilled) {
    // 22 of 48 are 45.8 %, 21 are 43.8 %
    assertThat(said(jumping(1000, news, 60, 0))).isEqualTo(filled(isFilled));
  }

  @Test
  void theRateThatIsLeftIsThatOfTheNews() {
    assertThat(FilledCheck.of(jumping(1000, 12, 60, 0), 200).get(0).what().args())
        .hasEntrySatisfying("trueHz", hz -> assertThat((double) hz).isCloseTo(50, within(1e-9)));
  }

  @ParameterizedTest
  @CsvSource({"41, true", "39, false"})
  void onlyMovementIsLookedAt(double degPerS, boolean isFilled) {
    assertThat(said(jumping(1000, 12, degPerS, 0))).isEqualTo(filled(isFilled));
  }

  @ParameterizedTest
  @CsvSource({"194, true", "193, false"})
  void fourWindowsAreNeeded(int samples, boolean isFilled) {
    assertThat(said(jumping(samples, 12, 60, 0))).isEqualTo(filled(isFilled));
  }

  @ParameterizedTest
  @CsvSource({"0.0097, true", "0.0104, false"})
  void aHundredthOfTheLargestStepIsNone(double little, boolean isFilled) {
    assertThat(said(jumping(1000, 12, 60, little))).isEqualTo(filled(isFilled));
  }

  /** What a fourth difference over two samples leaves of the squares of a wave. */
  private static double left(int waves) {
    double cos = Math.cos(2 * Math.PI * waves * 2 / WINDOW);
    return Math.pow(1 - cos, 4) / 16;
  }

  /** Three waves a window, and five, of which the fourth difference leaves so much in all. */
  private static UnitStream waves(int samples, double share, double size) {
    double slow = left(3);
    double part = (share - slow) / (left(5) - slow);
    return unit(
        samples,
        i ->
            size
                * (Math.sqrt(1 - part) * Math.sin(2 * Math.PI * 3 * i / WINDOW)
                    + Math.sqrt(part) * Math.sin(2 * Math.PI * 5 * i / WINDOW)),
        i -> 0);
  }

  private static List<QualityReason> smoothed(boolean isSmoothed) {
    return isSmoothed ? List.of(QualityReason.SMOOTHED) : List.of();
  }

  @ParameterizedTest
  @CsvSource({"0.0039, true", "0.0041, false"})
  void fourThousandthsOfFastChangesAreFew(double share, boolean isSmoothed) {
    assertThat(said(waves(2000, share, 1))).isEqualTo(smoothed(isSmoothed));
  }

  @ParameterizedTest
  @CsvSource({"967, false", "968, true"})
  void twentyWindowsAreNeeded(int samples, boolean isSmoothed) {
    assertThat(said(waves(samples, 0.002, 1))).isEqualTo(smoothed(isSmoothed));
  }

  @ParameterizedTest
  @CsvSource({"1.03e-5, true", "0.97e-5, false"})
  void whatIsStillerThanAnySensorWasComputed(double fastRms, boolean isSmoothed) {
    // The mean square of a wave is half that of its size.
    double size = fastRms / Math.sqrt(0.002 / 2);
    assertThat(said(waves(2000, 0.002, size))).isEqualTo(smoothed(isSmoothed));
  }

  @ParameterizedTest
  @CsvSource({"2, true", "3, false"})
  void theLiveliestWindowsDecideButForThreeInAHundred(int lively, boolean isSmoothed) {
    // Given: 100 windows, some of them of fast waves. Expect: the third liveliest counts.
    UnitStream slow = waves(8 + 100 * WINDOW, 0.002, 1);
    UnitStream fast = waves(8 + 100 * WINDOW, 0.01, 1);
    double[] mixed = slow.accelColumnMps2(0).clone();
    double[] quick = fast.accelColumnMps2(0);
    // windows begin at sample 4, a difference reaches 4 samples to either side
    for (int i = 4 + 50 * WINDOW + 6; i < 4 + (50 + lively) * WINDOW - 6; i++) {
      mixed[i] = quick[i];
    }
    assertThat(said(unit(mixed.length, i -> mixed[i], i -> 0))).isEqualTo(smoothed(isSmoothed));
  }
}
