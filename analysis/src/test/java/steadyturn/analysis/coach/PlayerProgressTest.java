package steadyturn.analysis.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;

class PlayerProgressTest {

  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");

  @Test
  void aPlayerWhoLearnedToTurnHasChangedSinceTheFirstLesson() {
    // Given: two lessons of an invented slider (turn -28 deg) and one of a good turner (-47 deg),
    // ten swings each. Expect: turn at the top really changed since the last and since the first.
    Random random = new Random(31);
    PlayerProgress progress =
        PlayerProgress.of(
            List.of(
                step("01", KnownPlayer.slider(), random),
                step("02", KnownPlayer.slider(), random),
                step("03", KnownPlayer.goodTurner(), random)));
    assertThat(verdict(progress.sinceLast().orElseThrow())).isEqualTo(ComparisonVerdict.REAL);
    assertThat(verdict(progress.sinceFirst().orElseThrow())).isEqualTo(ComparisonVerdict.REAL);
    assertThat(progress.steps().get(0).advice().priority()).isPresent();
    assertThat(progress.steps().get(2).advice().priority()).isEmpty();
  }

  @Test
  void aPlayerWhoStaysTheSameIsNotToldOfAChange() {
    // Given: 100 pairs of lessons of a player with the same habits. Expect: at most 12 pairs with
    // any "real": the rows together give 5 in 100, and 12 is three standard deviations above.
    Random random = new Random(32);
    int alarms = 0;
    for (int i = 0; i < 100; i++) {
      KnownPlayer same = KnownPlayer.goodTurner().unchanging();
      Comparison last =
          PlayerProgress.of(List.of(step("01", same, random), step("02", same, random)))
              .sinceLast()
              .orElseThrow();
      alarms += last.rows().stream().anyMatch(PlayerProgressTest::real) ? 1 : 0;
    }
    assertThat(alarms).isLessThanOrEqualTo(12);
  }

  @Test
  void oneLessonAloneHasNothingToCompare() {
    PlayerProgress progress =
        PlayerProgress.of(List.of(step("01", KnownPlayer.slider(), new Random(33))));
    assertThat(progress.steps()).hasSize(1);
    assertThat(progress.sinceLast()).isEmpty();
    assertThat(progress.sinceFirst()).isEmpty();
    assertThat(progress.given()).contains(TURN);
  }

  private static boolean real(ComparisonRow row) {
    return row.verdict() == ComparisonVerdict.REAL
        || row.verdict() == ComparisonVerdict.REAL_BUT_SMALL;
  }

  private static ComparisonVerdict verdict(Comparison comparison) {
    return comparison.rows().stream()
        .filter(row -> row.what().equals(TURN))
        .findFirst()
        .orElseThrow()
        .verdict();
  }

  private static LessonStep step(String lesson, KnownPlayer player, Random random) {
    var swings = player.lesson(random, 10);
    Coach coach = new Coach(TeachingReader.shipped());
    return new LessonStep(lesson, "", swings, coach.advise("p01", "7-iron", swings));
  }
}
