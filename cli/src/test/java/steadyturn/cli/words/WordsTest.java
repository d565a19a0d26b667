package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;
import static steadyturn.ingest.quality.QualityReason.APART;
import static steadyturn.ingest.quality.QualityReason.GAP;
import static steadyturn.ingest.quality.QualityReason.HELD;
import static steadyturn.ingest.quality.QualityReason.SLOW;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.AimReason;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.swing.EventReason;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/** How reasons and other texts become sentences. Words_eo.properties of these tests is partial. */
class WordsTest {

  private static final Words ENGLISH = Words.english();
  private static final Words OTHER = Words.of(Locale.forLanguageTag("eo"));

  @Test
  void aNumberIsShownWithTheDecimalsThatTheTextAsksFor() {
    // Given: 0.12345 s in a text with {longestS:2}. Expect: two decimals, a count as it is.
    assertThat(ENGLISH.text(Reason.of(GAP, 3, 0.12345)))
        .isEqualTo("There are 3 gaps, the longest 0.12 s.");
  }

  @Test
  void oneOfAThingMayHaveATextOfItsOwn() {
    assertThat(ENGLISH.text(Reason.of(GAP, 1L, 0.402))).isEqualTo("There is a gap of 0.40 s.");
  }

  @Test
  void aValueWithSignsOfAPatternIsTakenAsItIs() {
    assertThat(ENGLISH.text("table.found", 2, "$1 \\ {0}")).isEqualTo("2 found: $1 \\ {0}");
  }

  @Test
  void pointsAndContractWordsAreToldInPlainWords() {
    assertThat(ENGLISH.text(Reason.of(APART, 0, 1, BodyPoint.LEAD_HAND, 2, 3)))
        .contains("the lead hand unit");
    assertThat(ENGLISH.text(Reason.of(HELD, "gyro-z", 0.52)))
        .isEqualTo("The gyroscope z held one value for 0.5 s while the unit moved.");
    assertThat(ENGLISH.text(Reason.of(MeasureReason.NO_POSITION, "lead-arm-level-down")))
        .isEqualTo("arm level down was not found");
  }

  @Test
  void aSignedNumberMayBeToldByWordsForEitherSide() {
    assertThat(ENGLISH.text(Reason.of(AimReason.SEEN, 3.04, -0.96, 7.0)))
        .startsWith("by the aim step the hips stood 3.0 deg open at address")
        .contains("(95 % range: 1.0 deg closed to 7.0 deg open)");
  }

  @Test
  void aSecondReasonFollowsTheFirst() {
    Reason both =
        Reason.of(MeasureReason.WRIST_FROM_SHAFT).and(Reason.of(EventReason.TOP_FROM_HAND));
    assertThat(ENGLISH.text(both))
        .startsWith("no hand unit: ")
        .endsWith("counts; no forearm unit: from the hand, which turns round later");
    assertThat(ENGLISH.text(Reason.NONE)).isEmpty();
  }

  @Test
  void whatToDoFollowsWhereTheBundleSaysIt() {
    assertThat(ENGLISH.advice(Reason.of(SLOW, 50.4)))
        .isEqualTo(
            "The unit gives only 50 samples a second."
                + " Set it to 200 Hz or more; 500 Hz is best.");
    Reason noTop = Reason.of(MeasureReason.NO_TOP_OR_IMPACT);
    assertThat(ENGLISH.advice(noTop)).isEqualTo(ENGLISH.text(noTop));
  }

  @Test
  void noticesThatReadAlikeAreToldOnceWithWhatTheyAreSaidOf() {
    // Given: 50.4 and 50.3 Hz of one unit, as overlapping stretches give them, and a wear step.
    List<Notice> notices =
        List.of(
            new Notice("lead_hand", Reason.of(SLOW, 50.4)),
            new Notice("lead_hand", Reason.of(SLOW, 50.3)),
            new Notice("bow", Reason.of(MeasureReason.NO_TOP_OR_IMPACT)));
    assertThat(ENGLISH.told(notices).keySet())
        .containsExactly(
            "lead hand: The unit gives only 50 samples a second."
                + " Set it to 200 Hz or more; 500 Hz is best.",
            "bow: top or impact was not found");
  }

  @Test
  void aTranslationIsAFileAndWhatItLacksStaysEnglish() {
    assertThat(OTHER.text(Reason.of(SLOW, 50.4)))
        .isEqualTo("La sensilo donas nur 50 valorojn en sekundo.");
    assertThat(OTHER.text("table.none-found")).isEqualTo("none found");
  }

  @Test
  void theDecimalMarkIsThatOfTheWords() {
    // Given: a language of the bundle and one that there is no bundle for. Expect: the comma of
    // Esperanto (Unicode CLDR, eo: decimal ","), and a point in the sentence that stays English.
    Reason gap = Reason.of(GAP, 3, 0.12345);
    assertThat(OTHER.text(gap)).isEqualTo("Estas 3 breĉoj, la plej longa 0,12 s.");
    assertThat(Words.of(Locale.forLanguageTag("tlh")).text(gap)).contains("0.12 s");
    assertThat(OTHER.language()).isEqualTo("eo");
    assertThat(Words.of(Locale.forLanguageTag("tlh")).language()).isEqualTo("en");
  }

  @Test
  void whatRoundsToZeroHasNoSign() {
    // Given: -0.04 s and -0.05 s with one decimal. Expect: 0.0 and -0.1 (half up, away from zero).
    assertThat(Words.english().decimal(-0.04, 1)).isEqualTo("0.0");
    assertThat(Words.english().decimal(-0.05, 1)).isEqualTo("-0.1");
  }
}
