package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SharedErrorRow;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.analysis.measure.Measure;

/**
 * The part of the error that the swings of a lesson share. {@code -Dsteadyturn.shared.lessons=100}
 * makes the rows of shared-error.csv, in target/.
 */
class SharedErrorStudyTest {

  private static final int LESSONS = Integer.getInteger("steadyturn.shared.lessons", 4);
  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");

  @Test
  void theSplitOfDrawnErrorsComesOutAgain() {
    // Given: 400 lessons of ten errors, shared SD 3, own SD 4. Expect: share 9 / 25 = 0.36, SDs 3
    // and 4. Within 0.06 and 0.3: three standard errors of 400 lessons.
    System.err.println("seed 5");
    Random random = new Random(5);
    List<double[]> errors = new ArrayList<>();
    for (int lesson = 0; lesson < 400; lesson++) {
      double shared = 3 * random.nextGaussian();
      double[] own = new double[10];
      for (int i = 0; i < own.length; i++) {
        own[i] = shared + 4 * random.nextGaussian();
      }
      errors.add(own);
    }
    SharedErrorRow row = SharedErrorStudy.part("drawn", TURN, errors).orElseThrow();
    assertThat(row.share()).isCloseTo(0.36, within(0.06));
    assertThat(row.betweenSd()).isCloseTo(3, within(0.3));
    assertThat(row.withinSd()).isCloseTo(4, within(0.3));
    assertThat(row.low()).isLessThan(0.36);
    assertThat(row.high()).isGreaterThan(0.36).isLessThan(0.45);
  }

  @Test
  void errorsThatShareNothingHaveNoSharedPart() {
    System.err.println("seed 6");
    Random random = new Random(6);
    List<double[]> errors = new ArrayList<>();
    for (int lesson = 0; lesson < 100; lesson++) {
      errors.add(random.doubles(8).map(x -> x - 0.5).toArray());
    }
    SharedErrorRow row = SharedErrorStudy.part("drawn", TURN, errors).orElseThrow();
    assertThat(row.low()).isZero();
    assertThat(row.high()).isLessThan(0.15);
  }

  @ParameterizedTest
  @CsvSource({"CALIBRATED, 650001", "RAW, 660001"})
  void simulatedLessonsSplitTheirErrorsAsTheTableSays(UnitGrade units, long seed)
      throws IOException {
    // Given: lessons of ten swings of all sorts of players, 200 Hz; seeds that no judged test uses,
    // in the short form the first of those that made the table. Expect: at least nine tenths of the
    // rows' intervals reach those of the table.
    System.err.println("seed " + seed);
    LessonSpec spec =
        LessonSpec.standard().withHits(10).withPractices(0).withRateHz(200).withUnitGrade(units);
    List<SharedErrorRow> rows = SharedErrorStudy.run(spec, SharedErrorStudy.looks(), LESSONS, seed);
    Files.write(
        Path.of("target", "shared-error-" + rows.get(0).units() + ".csv"),
        rows.stream().map(SharedErrorStudyTest::line).toList());
    long near = rows.stream().filter(SharedErrorStudyTest::reachesTheTable).count();
    assertThat(near).isGreaterThanOrEqualTo(rows.size() * 9L / 10);
  }

  /** A row as it stands in shared-error.csv. */
  private static String line(SharedErrorRow row) {
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%d,%d,%.2f,%.2f,%.2f,%.4g,%.4g,%s",
        row.units(),
        row.what().measure().id(),
        row.what().at(),
        row.lessons(),
        row.swings(),
        row.share(),
        row.low(),
        row.high(),
        row.betweenSd(),
        row.withinSd(),
        row.what().measure().unit());
  }

  private static boolean reachesTheTable(SharedErrorRow row) {
    return ErrorSplit.rows().stream()
        .filter(each -> each.units().equals(row.units()) && each.what().equals(row.what()))
        .anyMatch(each -> row.low() <= each.high() && each.low() <= row.high());
  }

  @Test
  void everyMeasureThatIsComparedHasItsRow() {
    for (MeasureAt what : SharedErrorStudy.looks()) {
      assertThat(ErrorSplit.rows()).anyMatch(row -> row.what().equals(what));
    }
  }
}
