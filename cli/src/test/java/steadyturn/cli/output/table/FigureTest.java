package steadyturn.cli.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

class FigureTest {

  private static MeasureValue value(
      Measure measure, double low, double value, double high, Grade grade) {
    return new MeasureValue(measure, "top", value, low, high, grade, Reason.NONE);
  }

  @ParameterizedTest(name = "{0} {2} in {1} to {3}: {4}")
  @CsvSource({
    "PELVIS_TURN,          -46.11, -45.24, -44.4,  -45.2 ±0.9",
    "PELVIS_TURN,          -46.14, -45.24, -44.34, -45.2 ±0.9",
    "PELVIS_TURN,          -46.145, -45.24, -44.4, -45.2 ±1.0",
    "PELVIS_TURN,          -46,    -45.24, -44,    -45 ±2",
    "PELVIS_TURN,          -0.1,   -0.04,   0.1,   0 ±1",
    "PELVIS_SLIDE,         -12,    -7.6,    3,     -8 ±11",
    "PELVIS_SLIDE,         -19,    -7.6,    3,     -8 ±12",
    "PELVIS_SLIDE_PER_TURN, 0.1,    0.456,  0.7,   0.46 ±0.36",
    "PELVIS_TURN_TO_SLIDE,  9.5,   10.04,  10.5,   10.0 ±0.6",
    "TEMPO_RATIO,           2.9,    3.04,   3.3,   3.0 ±0.3",
    "TEMPO_BACK,            0.8,    0.806,  0.82,  0.81 ±0.02",
    "WRIST_RELEASE,        85,     94.6,  100,     95 ±10"
  })
  void narrowShowsTheLongerSideRoundedUp(
      Measure measure, double low, double value, double high, String expected) {
    assertThat(Figure.narrow(value(measure, low, value, high, Grade.MEASURED))).isEqualTo(expected);
    assertThat(Figure.narrow(value(measure, low, value, high, Grade.ESTIMATED)))
        .isEqualTo("~" + expected);
  }

  @Test
  void atLeastAndWithheldHaveSignsOfTheirOwn() {
    MeasureValue atLeast =
        value(Measure.PELVIS_TURN_TO_SLIDE, 31.26, 31.26, Double.POSITIVE_INFINITY, Grade.MEASURED);
    assertThat(Figure.narrow(atLeast)).isEqualTo("≥31.2");
    MeasureValue none =
        MeasureValue.withheld(Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS));
    assertThat(Figure.narrow(none)).isEqualTo("-");
  }

  @ParameterizedTest
  @CsvSource({
    "PELVIS_TURN, -0.04, 0.0", "PELVIS_TURN, 1.25, 1.2", "PELVIS_TURN, 1.35, 1.4",
    "PELVIS_SLIDE, -0.4, 0", "TEMPO_DOWN, 0.255, 0.26", "WRIST_KEPT, 85.4, 85"
  })
  void nearestHasTheDecimalsOfItsMeasureAndADot(Measure measure, double number, String expected) {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Figure.nearest(number, measure)).isEqualTo(expected);
    } finally {
      Locale.setDefault(before);
    }
  }
}
