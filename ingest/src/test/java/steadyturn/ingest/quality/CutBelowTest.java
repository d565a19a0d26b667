package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A made flat top among values half as large, to either side of each limit (our choices). */
class CutBelowTest {

  private static final double STATED = 100;
  private static final double SMALLEST = 20;

  private final double[] axis = new double[40];

  private void flat(int from, int samples, double value) {
    Arrays.fill(axis, 0.5 * value);
    Arrays.fill(axis, from, from + samples, value);
  }

  private OptionalDouble cut() {
    return CutBelow.of(STATED, new double[][] {new double[40], axis, new double[40]}, SMALLEST);
  }

  @ParameterizedTest
  @CsvSource({
    "94, 4, true",
    "-94, 4, true",
    "96, 4, false",
    "94, 3, false",
    "20.1, 4, true",
    "19.9, 4, false",
    "-50, 20, true"
  })
  void aTopFarBelowTheStatedRangeIsACut(double top, int samples, boolean isCut) {
    flat(10, samples, top);
    assertThat(cut()).isEqualTo(isCut ? OptionalDouble.of(Math.abs(top)) : OptionalDouble.empty());
  }

  @ParameterizedTest
  @CsvSource({"9, 0.9955, true", "9, 0.9965, false", "14, 0.9955, true", "14, 0.9965, false"})
  void itIsReachedAndLeftByAJump(int beside, double part, boolean isCut) {
    // Given: the sample before the flat, or behind it, lower by 0.45 or 0.35 %.
    flat(10, 4, 60);
    axis[beside] = 60 * part;
    assertThat(cut().isPresent()).isEqualTo(isCut);
  }

  @ParameterizedTest
  @CsvSource({"1e-5, true", "3e-5, false"})
  void theLastDigitsOfATopMayDiffer(double lower, boolean isCut) {
    flat(10, 4, 60);
    axis[11] *= 1 - lower;
    assertThat(cut().isPresent()).isEqualTo(isCut);
  }

  @Test
  void aFlatAtTheEdgeOfTheStreamTellsNoJump() {
    flat(0, 6, 60);
    assertThat(cut()).isEmpty();
    flat(34, 6, 60);
    assertThat(cut()).isEmpty();
  }

  @Test
  void theTopOfAllAxesDecides() {
    // Given: a flat of 60 beside a single value of 80 on another axis.
    flat(10, 4, 60);
    double[] other = new double[40];
    other[20] = 80;
    assertThat(CutBelow.of(STATED, new double[][] {other, axis, axis}, SMALLEST)).isEmpty();
  }
}
