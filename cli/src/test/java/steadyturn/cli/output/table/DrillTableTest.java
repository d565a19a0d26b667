package steadyturn.cli.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventReason;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;

class DrillTableTest {

  @Test
  void everyRepetitionStandsBesideItsRange() {
    // Given: the drill "hands apart", goal 85 to 115 % kept, and half swings of 95 +- 2, 70 +- 2,
    // 86 +- 2 and one without a value. Expect: inside, outside, cannot be told, one not measured.
    var mark = new Mark(10, 60, MarkWord.DRILL_REP.word(), "", "apart-hands");
    List<String> lines =
        DrillTable.lines(
            DrillScore.of(
                TeachingReader.shipped(),
                List.of(mark),
                List.of(),
                List.of(
                    rehearsal(12, 95),
                    rehearsal(20, 70),
                    rehearsal(30, 86),
                    new Rehearsal(40, List.of()))));
    String text = String.join("\n", lines);
    assertThat(text)
        .contains("Hands apart: cock kept, arm level down between 85 and 115 %")
        .containsPattern("1 +12\\.0 +~95 ±4 +inside\n")
        .containsPattern("2 +20\\.0 +~70 ±4 +outside\n")
        .containsPattern("3 +30\\.0 +~86 ±4 +cannot be told")
        .contains("1 inside the goal, 1 outside, 1 cannot be told. 1 could not be measured");
    assertThat(lines).allMatch(line -> line.length() <= 100);
  }

  @Test
  void withoutDrillsThereIsNothing() {
    assertThat(DrillTable.lines(List.of())).isEmpty();
  }

  private static Rehearsal rehearsal(double timeS, double keptPct) {
    return new Rehearsal(
        timeS,
        List.of(
            MeasureValue.of(
                Measure.WRIST_KEPT,
                "lead-arm-level-down",
                keptPct,
                2,
                Grade.ESTIMATED,
                Reason.of(EventReason.HALF_SWING))));
  }
}
