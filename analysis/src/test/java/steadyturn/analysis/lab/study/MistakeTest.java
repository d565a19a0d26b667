package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.lab.FamilyLessons;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.Recording;

/**
 * One made lesson a mistake (tuning half, standard situation, seed 3): what is wrong is refused by
 * its name. With {@code -Dmistakes.lessons=15} as many lessons of all situations a mistake; its
 * figures are in docs/mistakes.md.
 */
@SuppressWarnings("EnumOrdinal") // which lesson a kind is tried on
class MistakeTest {

  private static final long SEED = 3;

  private static final Recording SOUND =
      FamilyLessons.simulate(Situation.STANDARD, Half.TUNING, SEED).recording();

  /** These are not noticed for sure yet: docs/mistakes.md says how often. */
  private static final Set<Mistake> OPEN =
      EnumSet.of(
          Mistake.ARM_CLOCKS_OFF,
          Mistake.FOREARM_CLOCK_OFF,
          Mistake.HAND_CLOCK_OFF,
          Mistake.STATED_5_PCT_FAST);

  private static LessonResult analyzed(Recording recording) {
    return new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
        .analyze(List.of(recording))
        .get(0);
  }

  private static Set<String> refused(LessonResult result) {
    return result.notices().stream()
        .filter(Notice::refuses)
        .map(notice -> notice.reason().code().word())
        .collect(Collectors.toSet());
  }

  @Test
  void aSoundLessonIsNotRefused() {
    // Expect: nothing refused, and something measured.
    LessonResult result = analyzed(SOUND);
    assertThat(refused(result)).as("seed " + SEED).isEmpty();
    assertThat(result.isSound()).isTrue();
    assertThat(result.swings()).hasSize(2);
  }

  @ParameterizedTest
  @EnumSource(Mistake.class)
  void aMistakeIsCalledByItsName(Mistake mistake) {
    if (OPEN.contains(mistake)) {
      return;
    }
    LessonResult result = analyzed(mistake.in(SOUND, SEED));
    assertThat(refused(result)).as("seed " + SEED).containsAnyElementsOf(mistake.causes());
    assertThat(result.isSound()).isFalse();
  }

  @Test
  void aPelvisUnitUpsideDownCostsThePelvisAlone() {
    // Given: the mistake that turned the sign of the slide. Expect: no value of the pelvis, its
    // reason with the unit's name; the wrist is told as without the pelvis unit.
    LessonResult result = analyzed(Mistake.PELVIS_UPSIDE_DOWN.in(SOUND, SEED));
    List<MeasureValue> values =
        result.swings().stream().flatMap(swing -> swing.measures().stream()).toList();
    assertThat(values)
        .filteredOn(v -> v.measure().id().startsWith("pelvis."))
        .isNotEmpty()
        .allMatch(v -> !v.given())
        .allMatch(v -> v.why().code().word().equals("measure.unit-refused"));
    assertThat(values)
        .filteredOn(v -> v.measure().id().startsWith("wrist.") && v.given())
        .hasSizeGreaterThan(10);
  }

  @Test
  void theWrongSideLeavesTheTempo() {
    LessonResult result = analyzed(Mistake.WRONG_HANDEDNESS.in(SOUND, SEED));
    assertThat(result.swings())
        .flatExtracting(swing -> swing.measures())
        .filteredOn(v -> v.given())
        .noneMatch(
            v -> v.measure().id().startsWith("pelvis.") || v.measure().id().startsWith("wrist."));
  }

  /** The long form: prints how often each was named, and how many sound lessons were refused. */
  @Test
  @EnabledIfSystemProperty(named = "mistakes.lessons", matches = "[0-9]+")
  void mistakesInLessonsOfAllSituations() {
    int lessons = Integer.getInteger("mistakes.lessons");
    int[] named = new int[Mistake.values().length];
    int falseAlarms = 0;
    for (int seed = 1; seed <= lessons; seed++) {
      Situation situation = Situation.values()[seed % Situation.values().length];
      Recording sound = FamilyLessons.simulate(situation, Half.TUNING, seed).recording();
      falseAlarms += refused(analyzed(sound)).isEmpty() ? 0 : 1;
      for (Mistake mistake : Mistake.values()) {
        Set<String> found = refused(analyzed(mistake.in(sound, seed)));
        named[mistake.ordinal()] += found.stream().anyMatch(mistake.causes()::contains) ? 1 : 0;
      }
    }
    for (Mistake mistake : Mistake.values()) {
      System.out.println(mistake.word() + ": " + named[mistake.ordinal()] + " of " + lessons);
    }
    assertThat(falseAlarms).as("sound lessons refused of " + lessons).isZero();
  }
}
