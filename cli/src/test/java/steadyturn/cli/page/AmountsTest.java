package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;

/**
 * An inch is 25.4 mm exactly (international yard and pound agreement of 1959; also NIST SP 811,
 * appendix B).
 */
class AmountsTest {

  private static Amounts of(String units, String audience) {
    return new Amounts(LengthUnits.valueOf(units), Audience.valueOf(audience), Words.english());
  }

  @ParameterizedTest
  @CsvSource({
    "METRIC,   TEACHER, PELVIS_SLIDE,          1",
    "METRIC,   PLAYER,  PELVIS_SLIDE,          0.1",
    "IMPERIAL, TEACHER, PELVIS_SLIDE,          0.03937007874015748",
    "IMPERIAL, PLAYER,  PELVIS_SLIDE,          0.03937007874015748",
    "METRIC,   TEACHER, PELVIS_SLIDE_PER_TURN, 1",
    "METRIC,   PLAYER,  PELVIS_SLIDE_PER_TURN, 1",
    "IMPERIAL, TEACHER, PELVIS_SLIDE_PER_TURN, 0.03937007874015748",
    "IMPERIAL, TEACHER, PELVIS_TURN,           1",
    "IMPERIAL, TEACHER, WRIST_RELEASE,         1",
    "METRIC,   PLAYER,  WRIST_RELEASE,         1",
    "METRIC,   PLAYER,  PELVIS_TURN_TO_SLIDE,  1"
  })
  void aLengthIsTakenIntoTheReadersUnit(String units, String who, Measure measure, double factor) {
    assertThat(of(units, who).factor(measure)).isCloseTo(factor, within(1e-15));
  }

  @ParameterizedTest(name = "{0} {1} {2}: {3} -> {4}")
  @CsvSource({
    "METRIC,   TEACHER, PELVIS_SLIDE,           25.4,  25 mm",
    "METRIC,   TEACHER, PELVIS_SLIDE,          -12.6,  −13 mm",
    "METRIC,   TEACHER, PELVIS_SLIDE,           -0.4,  0 mm",
    "METRIC,   PLAYER,  PELVIS_SLIDE,           25.4,  2.5 cm",
    "IMPERIAL, TEACHER, PELVIS_SLIDE,           25.4,  1.0 in",
    "IMPERIAL, TEACHER, PELVIS_SLIDE,          2540,   100.0 in",
    "IMPERIAL, PLAYER,  PELVIS_SLIDE,          -50.8,  −2.0 in",
    "METRIC,   TEACHER, PELVIS_SLIDE_PER_TURN,  1.234, 1.23 mm/deg",
    "IMPERIAL, TEACHER, PELVIS_SLIDE_PER_TURN,  25.4,  1.000 in/deg",
    "METRIC,   TEACHER, PELVIS_TURN,           -45.24, −45.2 deg",
    "METRIC,   PLAYER,  PELVIS_TURN,            45.26, 45.3 degrees",
    "METRIC,   TEACHER, PELVIS_TURN_TO_SLIDE,    9.87, 9.9 deg/cm",
    "METRIC,   TEACHER, TEMPO_BACK,             0.806, 0.81 s",
    "METRIC,   TEACHER, TEMPO_RATIO,            3.04,  3.0",
    "METRIC,   TEACHER, WRIST_RELEASE,         94.6,   95 ms",
    "METRIC,   TEACHER, PELVIS_TURN_SHARE,     71.5,   72 %",
    "METRIC,   TEACHER, WRIST_RATE,          1085.3,   1085 deg/s",
    "METRIC,   TEACHER, PELVIS_TURN,            NaN,   – deg"
  })
  void anAmountHasItsDecimalsItsUnitAndATrueMinus(
      String units, String who, Measure measure, double value, String expected) {
    assertThat(of(units, who).amount(value, measure)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "{0} {1}: {2} -> {3}")
  @CsvSource({
    "METRIC,   PELVIS_TURN,        -45.4,  45 degrees",
    "METRIC,   PELVIS_TURN,         45.6,  46 degrees",
    "METRIC,   PELVIS_SLIDE,       -52.4,  5 cm",
    "METRIC,   PELVIS_SLIDE,        52.6,  5.5 cm",
    "METRIC,   PELVIS_SLIDE,        57.6,  6 cm",
    "IMPERIAL, PELVIS_SLIDE,        25.4,  1 inch",
    "IMPERIAL, PELVIS_SLIDE,       -50.8,  2 inches",
    "IMPERIAL, PELVIS_SLIDE,        37.0,  1.5 inches",
    "IMPERIAL, PELVIS_SLIDE,        31.0,  1 inch",
    "IMPERIAL, PELVIS_SLIDE,        32.5,  1.5 inches",
    "METRIC,   TEMPO_BACK,          0.806, 0.81 seconds",
    "METRIC,   WRIST_RELEASE,      92.4,   90 thousandths of a second",
    "METRIC,   WRIST_RELEASE,      92.6,   95 thousandths of a second",
    "METRIC,   TEMPO_RATIO,         3.06,  3.1 times",
    "METRIC,   PELVIS_TURN_SHARE, -71.4,   71 %"
  })
  void forThePlayerANumberIsRoundedAgainAndHasNoSign(
      String units, Measure measure, double value, String expected) {
    assertThat(of(units, "PLAYER").plain(value, measure)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "METRIC,   PELVIS_TURN,   -40,   −40",
    "METRIC,   PELVIS_TURN,   -40.5, −40.5",
    "METRIC,   TEMPO_BACK,    0.62,  0.62",
    "METRIC,   TEMPO_BACK,    0.6,   0.6",
    "METRIC,   PELVIS_SLIDE,  100,   100",
    "IMPERIAL, PELVIS_SLIDE,  50.8,  2"
  })
  void aLimitStandsAsItWasSetWithoutZerosBehindTheDot(
      String units, Measure measure, double value, String expected) {
    assertThat(of(units, "TEACHER").asSet(value, measure)).isEqualTo(expected);
  }

  @Test
  void aRangeHasItsLowAndItsHighEndInThatOrder() {
    Amounts inches = of("IMPERIAL", "TEACHER");
    assertThat(inches.ranged(25.4, -25.4, 76.2, Measure.PELVIS_SLIDE))
        .isEqualTo("1.0 in (−1.0 to 3.0)");
  }

  @ParameterizedTest
  @CsvSource({
    "1.25, 1, 1.3",
    "-1.2, 0, −1",
    "-0.04, 1, 0.0",
    "0, 0, 0",
    "-0.06, 1, −0.1",
    "9, 0, 9",
    "Infinity, 1, –",
    "NaN, 1, –",
    "-0.1, 1, −0.1"
  })
  void aDecimalNumberIsRoundedAndNeverMinusZero(double value, int decimals, String expected) {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Amounts.decimal(value, decimals, Words.english())).isEqualTo(expected);
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void theWordsOfTheCommandLineAreSmall() {
    assertThat(LengthUnits.METRIC).hasToString("metric");
    assertThat(LengthUnits.IMPERIAL).hasToString("imperial");
    assertThat(Audience.PLAYER).hasToString("player");
    assertThat(Audience.TEACHER).hasToString("teacher");
  }
}
