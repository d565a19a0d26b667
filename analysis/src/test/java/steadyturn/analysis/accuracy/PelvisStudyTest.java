package steadyturn.analysis.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The short form of {@code steadyturn accuracy}: few lessons, so that it guards and does not
 * measure.
 */
class PelvisStudyTest {

  @Test
  void theStandardLessonKeepsItsLevels() {
    // Given: 24 standard lessons of one swing, seeds 1000 on. Expect: every level kept and most
    // intervals true.
    // Within 1.3 x each level and 80 % coverage: an RMSE of 24 values varies by 15 %, a coverage of
    // 95 % by 4.4 %.
    System.out.println("seeds 1000..1023");
    List<StudyRow> rows = PelvisStudy.run(StudyCase.standard(), 24, 1000, () -> {});
    for (StudyRow row : rows) {
      if (!Double.isNaN(row.level())) {
        assertThat(row.rmse()).as(row.name()).isLessThanOrEqualTo(1.3 * row.level());
      }
      if (!Double.isNaN(row.coveragePct()) && row.n() >= 20) {
        assertThat(row.coveragePct()).as(row.name()).isGreaterThanOrEqualTo(80);
      }
    }
  }

  @Test
  void theSameSeedGivesTheSameRows() {
    // Given: two runs of the same three lessons. Expect: equal rows to the last digit, whatever the
    // threads did.
    assertThat(PelvisStudy.run(StudyCase.raw(), 3, 5, () -> {}))
        .isEqualTo(PelvisStudy.run(StudyCase.raw(), 3, 5, () -> {}));
  }
}
