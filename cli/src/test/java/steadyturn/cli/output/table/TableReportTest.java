package steadyturn.cli.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.output.InventedLesson;

final class TableReportTest {

  private static String table(boolean everySwing) throws IOException {
    StringWriter text = new StringWriter();
    TableReport.write(List.of(InventedLesson.result()), Map.of(), everySwing, text);
    return text.toString();
  }

  @Test
  void noLineIsWiderThanEightyColumns() throws IOException {
    assertThat(table(true).lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void aValueStandsBesideItsInterval() throws IOException {
    // Given: turn at the top of swing 1: -45 with SD 0.46. Expect: 1.96 x 0.46 = 0.902, outwards
    // 1.0.
    assertThat(table(false)).contains("-45.0 ±1.0");
  }

  @Test
  void aWithheldValueComesWithItsReason() throws IOException {
    assertThat(table(false)).contains("needs a unit on the lead hand");
  }

  @Test
  void aFlagIsToldInPlainWords() throws IOException {
    assertThat(table(false)).contains("swing 2: the player was not still at address");
  }

  @Test
  void itSaysWhatItCannotTellAndHowToStaySafe() throws IOException {
    assertThat(table(false)).contains("weight, ground force, club path, ball flight");
    assertThat(table(false)).contains("stop at pain");
  }

  @Test
  void aLessonWithoutSwingsSaysSo() throws IOException {
    LessonResult full = InventedLesson.result();
    LessonResult empty =
        new LessonResult(
            full.recording(), full.player(), full.aim(), full.units(), List.of(), List.of());
    StringWriter text = new StringWriter();
    TableReport.write(List.of(empty), Map.of(), true, text);
    assertThat(text.toString()).contains("No full swing was found.");
  }
}
