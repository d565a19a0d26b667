package steadyturn.analysis.coach.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;

class DrillScoreTest {

  private static final Teaching TEACHING = TeachingReader.shipped();

  @Test
  void repetitionsInTheBandAreCountedWithTheLongestRun() {
    // Given: a drill with the goal -55 to -40 deg and repetitions -50, -30, -42, -44, -41.
    // Expect: 4 in the goal, 3 in a row.
    var score = score(reps(100, "club-across-hips", 5), swings(100, -50, -30, -42, -44, -41));
    assertThat(score.reps()).hasSize(5);
    assertThat(score.inBand()).isEqualTo(4);
    assertThat(score.longestRun()).isEqualTo(3);
  }

  @Test
  void aMarkWithoutASwingOrAValueIsCountedAsUnseen() {
    var swings = new ArrayList<>(swings(100, -50));
    swings.add(
        swing(
            2,
            120,
            MeasureValue.withheld(
                Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS))));
    var score = score(reps(100, "club-across-hips", 3), swings);
    assertThat(score.reps()).hasSize(1);
    assertThat(score.unseen()).isEqualTo(2);
  }

  @Test
  void repetitionsAreNoFullSwings() {
    // Given: two repetitions and full swings before and after.
    var all = new ArrayList<>(swings(20, -30, -31));
    all.addAll(swings(100, -50, -50));
    all.addAll(swings(300, -45));
    assertThat(DrillScore.fullSwings(all))
        .extracting(SwingResult::number)
        .containsExactly(20, 21, 300);
  }

  @Test
  void theFullSwingsBeforeAndAfterTellTheEffect() {
    // Given: four swings near -30 deg, the drill, four near -45. Expect: a real change of -15 deg.
    var all = new ArrayList<>(swings(20, -30, -31, -29, -30));
    all.addAll(swings(100, -50, -50, -50, -50));
    all.addAll(swings(300, -45, -46, -44, -45));
    var effect = score(reps(100, "club-across-hips", 4), all).effect().orElseThrow();
    assertThat(effect.verdict()).isEqualTo(ComparisonVerdict.REAL);
    assertThat(effect.difference().orElseThrow().value()).isBetween(-15.1, -14.9);
  }

  @Test
  void withoutFullSwingsOnBothSidesThereIsNoEffect() {
    var all = new ArrayList<>(swings(20, -30, -31, -29, -30));
    all.addAll(swings(100, -50, -50));
    assertThat(score(reps(100, "club-across-hips", 2), all).effect()).isEmpty();
  }

  @Test
  void aMarkOfAnUnknownDrillIsNotScored() {
    assertThat(DrillScore.of(TEACHING, reps(100, "juggling", 2), swings(100, -50), List.of()))
        .isEmpty();
  }

  private static DrillScore score(List<Mark> marks, List<SwingResult> swings) {
    return DrillScore.of(TEACHING, marks, swings, List.of()).get(0);
  }

  /** Marks every 20 s. */
  private static List<Mark> reps(double firstS, String drill, int count) {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      marks.add(new Mark(firstS + 20 * i, 0, MarkWord.DRILL_REP.word(), "", drill));
    }
    return marks;
  }

  /** Swings every 20 s, 3 s after the instant a repetition would be marked. */
  private static List<SwingResult> swings(int firstS, double... turnsDeg) {
    List<SwingResult> out = new ArrayList<>();
    for (int i = 0; i < turnsDeg.length; i++) {
      var turn =
          MeasureValue.of(Measure.PELVIS_TURN, "top", turnsDeg[i], 1, Grade.MEASURED, Reason.NONE);
      out.add(swing(firstS + i, firstS + 20 * i, turn));
    }
    return out;
  }

  private static SwingResult swing(int number, double atS, MeasureValue turn) {
    var top = new EventTime(SwingEvent.TOP, atS + 3, 0.01, Grade.MEASURED, Reason.NONE);
    SwingKind kind = number >= 100 && number < 200 ? SwingKind.DRILL : SwingKind.HIT;
    return new SwingResult(
        number, "7-iron", kind, List.of(), List.of(top), List.of(turn), List.of());
  }
}
