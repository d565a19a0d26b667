package steadyturn.ingest.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Four samples at 0, 1, 2 and 4 s; the accelerometer holds 1..12, the gyroscope 101..112. */
class UnitStreamTest {

  private static UnitStream stream(double... timeS) {
    return new UnitStream(
        UnitFacts.plain(BodyPoint.LEAD_HAND, 1),
        timeS,
        columns(0, timeS.length),
        columns(100, timeS.length));
  }

  private static UnitStream four() {
    return stream(0, 1, 2, 4);
  }

  private static double[][] columns(double from, int n) {
    double[][] out = new double[3][n];
    for (int axis = 0; axis < 3; axis++) {
      for (int i = 0; i < n; i++) {
        out[axis][i] = from + 3 * i + axis + 1;
      }
    }
    return out;
  }

  @Test
  void everyValueIsInItsPlace() {
    UnitStream unit = four();
    assertThat(unit.size()).isEqualTo(4);
    assertThat(unit.point()).isEqualTo(BodyPoint.LEAD_HAND);
    assertThat(unit.facts()).isEqualTo(UnitFacts.plain(BodyPoint.LEAD_HAND, 1));
    assertThat(unit.timeS(3)).isEqualTo(4);
    assertThat(unit.timeColumnS()).containsExactly(0, 1, 2, 4);
    assertThat(unit.accelMps2(1, 2)).isEqualTo(8);
    assertThat(unit.gyroRadPerS(2, 1)).isEqualTo(106);
    assertThat(unit.accelColumnMps2(0)).containsExactly(1, 4, 7, 10);
    assertThat(unit.gyroColumnRadPerS(0)).containsExactly(101, 104, 107, 110);
  }

  @Test
  void aSizeIsTheRootOfTheSumOfSquares() {
    // Given: (1, 2, 3) and (101, 102, 103). Expect: sqrt 14 and sqrt 31214.
    assertThat(four().accelNormMps2(0)).isCloseTo(Math.sqrt(14), within(1e-12));
    assertThat(four().gyroNormRadPerS(0)).isCloseTo(Math.sqrt(31_214), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"-1, 0", "0, 0", "0.5, 1", "1, 1", "3, 3", "4, 3", "4.1, 4"})
  void theFirstSampleAtOrAfterAnInstant(double instantS, int index) {
    assertThat(four().indexAt(instantS)).isEqualTo(index);
  }

  @ParameterizedTest
  @CsvSource({"0, 4, 3, 0", "1, 2, 1, 1", "0.5, 4.5, 3, 1", "2, 1, 0, 0", "5, 9, 0, 0"})
  void aPartHoldsItsFirstInstantAndNotItsLast(double fromS, double toS, int size, double firstS) {
    UnitStream part = four().between(fromS, toS);
    assertThat(part.size()).isEqualTo(size);
    if (size > 0) {
      assertThat(part.timeS(0)).isEqualTo(firstS);
      assertThat(part.accelMps2(2, 0)).isEqualTo(3 * four().indexAt(firstS) + 3);
      assertThat(part.gyroRadPerS(0, 0)).isEqualTo(101 + 3 * four().indexAt(firstS));
    }
  }

  @Test
  void shiftedMovesTimeForwardsAndNothingElse() {
    UnitStream moved = four().shifted(0.25);
    assertThat(moved.timeColumnS()).containsExactly(0.25, 1.25, 2.25, 4.25);
    assertThat(moved.accelColumnMps2(1)).containsExactly(2, 5, 8, 11);
    assertThat(moved.gyroColumnRadPerS(1)).containsExactly(102, 105, 108, 111);
  }

  @Test
  void timeMustGrow() {
    assertThatThrownBy(() -> stream(0, 1, 1)).hasMessageContaining("sample 2 at 1.0 s");
    assertThatThrownBy(() -> stream(1, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> stream(0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void columnsMustBeThreeAndAsLongAsTime() {
    UnitFacts facts = UnitFacts.plain(BodyPoint.PELVIS, 1);
    double[] timeS = {0, 1};
    assertThatThrownBy(() -> new UnitStream(facts, timeS, new double[2][2], new double[3][2]))
        .hasMessageContaining("accelerometer needs 3 columns, has 2");
    assertThatThrownBy(() -> new UnitStream(facts, timeS, new double[3][2], new double[4][2]))
        .hasMessageContaining("gyroscope needs 3 columns, has 4");
    assertThatThrownBy(() -> new UnitStream(facts, timeS, new double[3][3], new double[3][2]))
        .hasMessageContaining("accelerometer has 3 values for 2 instants");
    assertThatThrownBy(() -> new UnitStream(facts, timeS, new double[3][2], new double[3][1]))
        .hasMessageContaining("gyroscope has 1 values for 2 instants");
  }
}
