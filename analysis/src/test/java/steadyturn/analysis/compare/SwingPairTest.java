package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.compare.PairRow.Found;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class SwingPairTest {

  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");
  private static final double SHARED = ErrorSplit.defaults().sharedPart(TURN);

  @Test
  void theDifferenceIsSecondLessFirstWithEachSwingsOwnError() {
    // Given: -40 and -46 deg of one lesson, each with 1 deg (1 SD). Expect: -6; of 2 deg^2 the own
    // part stays whole and of the shared part half of a hundredth. Within 1e-9: roundings.
    PairRow row = row(swing("monday", 1, -40), swing("monday", 2, -46), usualSwings(2));
    double sd = Math.sqrt(2 * (1 - SHARED + 0.01 / 2 * SHARED));
    assertThat(row.difference().orElseThrow().value()).isCloseTo(-6, within(1e-12));
    assertThat(row.difference().orElseThrow().high())
        .isCloseTo(-6 + MeasureValue.Z95 * sd, within(1e-9));
  }

  @Test
  void betweenLessonsTheWholeErrorCounts() {
    PairRow row = row(swing("monday", 1, -40), swing("friday", 1, -46), usualSwings(2));
    assertThat(row.difference().orElseThrow().high())
        .isCloseTo(-6 + MeasureValue.Z95 * Math.sqrt(2), within(1e-9));
  }

  @Test
  void whatIsFoundGoesByErrorAndByThePlayersOwnSpread() {
    // Given: other swings with a spread of 2 deg (twenty of them: usual up to 5.9 deg). Expect:
    // 0.5 deg apart alike, 4 deg apart usual, 9 deg apart more than usual.
    LessonSwing first = swing("monday", 1, -40);
    List<LessonSwing> others = usualSwings(2);
    assertThat(row(first, swing("monday", 2, -40.5), others).found()).isEqualTo(Found.ALIKE);
    assertThat(row(first, swing("monday", 2, -44), others).found()).isEqualTo(Found.WITHIN_USUAL);
    assertThat(row(first, swing("monday", 2, -49), others).found()).isEqualTo(Found.BEYOND_USUAL);
    assertThat(row(first, swing("monday", 2, -49), List.of()).found())
        .isEqualTo(Found.USUAL_UNKNOWN);
  }

  @Test
  void aWithheldValueIsNotCompared() {
    MeasureValue none =
        MeasureValue.withheld(Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS));
    PairRow row = row(swing("monday", 1, -40), swing("monday", 2, none), usualSwings(2));
    assertThat(row.found()).isEqualTo(Found.NOT_MEASURED);
    assertThat(row.difference()).isEmpty();
  }

  @Test
  void twoSwingsOfAnUnchangedPlayerAreBeyondTheUsualInOneRowOfTwentyAtMost() {
    // Given: 2,000 pairs of one player (spread 2 deg, own error 0.5 deg) with four to ten other
    // swings. Expect: "more than usual" in 5 % at most; within 1 point, two standard errors of it.
    System.err.println("seed 91");
    Random random = new Random(91);
    int beyond = 0;
    for (int run = 0; run < 2000; run++) {
      List<LessonSwing> swings = new ArrayList<>();
      for (int i = 0; i < 6 + run % 7; i++) {
        double deg = -45 + 2 * random.nextGaussian() + 0.5 * random.nextGaussian();
        swings.add(swing("monday", i + 1, deg, 0.5 / Math.sqrt(1 - SHARED)));
      }
      beyond += row(swings.get(0), swings.get(1), swings).found() == Found.BEYOND_USUAL ? 1 : 0;
    }
    System.err.println("more than usual: " + beyond + " of 2000");
    assertThat(beyond).isBetween(60, 120);
  }

  private static PairRow row(LessonSwing a, LessonSwing b, List<LessonSwing> others) {
    return SwingPair.of(a, b, others, List.of(TURN)).rows().get(0);
  }

  /** Twenty swings of one lesson whose standard deviation is the spread. */
  private static List<LessonSwing> usualSwings(double spreadDeg) {
    List<LessonSwing> swings = new ArrayList<>();
    double away = spreadDeg * Math.sqrt(19.0 / 20);
    for (int i = 0; i < 20; i++) {
      swings.add(swing("monday", 10 + i, -45 + (i % 2 == 0 ? away : -away)));
    }
    return swings;
  }

  private static LessonSwing swing(String lesson, int number, double turnDeg) {
    return swing(lesson, number, turnDeg, 1);
  }

  private static LessonSwing swing(String lesson, int number, double turnDeg, double sdDeg) {
    return swing(
        lesson,
        number,
        MeasureValue.of(Measure.PELVIS_TURN, "top", turnDeg, sdDeg, Grade.MEASURED, Reason.NONE));
  }

  private static LessonSwing swing(String lesson, int number, MeasureValue value) {
    return new LessonSwing(
        lesson,
        new SwingResult(
            number, "7-iron", SwingKind.HIT, List.of(), List.of(), List.of(value), List.of()));
  }
}
