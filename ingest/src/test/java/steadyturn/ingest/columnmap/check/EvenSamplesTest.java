package steadyturn.ingest.columnmap.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class EvenSamplesTest {

  private static UnitStream stream(double rateHz, int n) {
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i / rateHz;
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = 10 * i + axis;
        gyro[axis][i] = 10 * i + 3 + axis;
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), timeS, accel, gyro);
  }

  @ParameterizedTest
  @CsvSource({"100, 1", "500, 5", "200, 2", "50, 1", "160, 2", "140, 1"})
  void samplesAreAveragedDownToAboutAHundredHertz(double rateHz, int each) {
    EvenSamples even = EvenSamples.of(stream(rateHz, 101));
    assertThat(even.stepS()).isCloseTo(each / rateHz, within(1e-12));
    assertThat(even.size()).isEqualTo(101 / each);
    for (int c = 0; c < 6; c++) {
      // The mean of 10 i + c over the samples of the second step.
      assertThat(even.values()[c][1]).isCloseTo(10 * (each + (each - 1) / 2.0) + c, within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.019, false", "0.021, true"})
  void aJumpOfMoreThanThreeStepsIsAGap(double byS, boolean gap) {
    UnitStream unit = stream(100, 50);
    double[] timeS = unit.timeColumnS();
    for (int i = 20; i < 50; i++) {
      timeS[i] += byS;
    }
    EvenSamples even = EvenSamples.of(unit);
    assertThat(Double.isNaN(even.values()[0][20])).isEqualTo(gap);
    assertThat(even.isWhole(0, 20)).isTrue();
    assertThat(even.isWhole(20, 1)).isEqualTo(!gap);
    assertThat(even.isWhole(21, 29)).isTrue();
    assertThat(even.isWhole(10, 20)).isEqualTo(!gap);
  }

  @Test
  void meanAndSpreadOfAPart() {
    // Given: 10 i + c for i = 2, 3, 4. Expect: mean 30 + c; each axis' variance 200/3 (by n), three
    // of them 200.
    EvenSamples even = EvenSamples.of(stream(100, 10));
    assertThat(even.mean(4, 2, 3)).isCloseTo(34, within(1e-12));
    assertThat(even.spread(0, 2, 3)).isCloseTo(Math.sqrt(200), within(1e-12));
    assertThat(even.spread(3, 2, 3)).isCloseTo(Math.sqrt(200), within(1e-12));
  }

  @Test
  void oneSampleHasTheWantedStep() {
    assertThat(EvenSamples.of(stream(100, 1)).stepS()).isEqualTo(0.01);
  }
}
