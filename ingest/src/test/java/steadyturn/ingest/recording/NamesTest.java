package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/** Names of files, points and instants as they are written and read. */
class NamesTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "1, sub-mika_ses-01_task-swing_tracksys-pelvis_run-01_motion.tsv",
    "12, sub-mika_ses-01_task-swing_tracksys-pelvis_run-12_motion.tsv",
    "100, sub-mika_ses-01_task-swing_tracksys-pelvis_run-100_motion.tsv"
  })
  void aRunHasItsNumberInItsNames(int run, String expected) {
    RunLabel label = RunLabel.run("mika", "01", run);
    assertThat(label.fileName("pelvis", "motion.tsv")).isEqualTo(expected);
    MotionName name = MotionName.parse(expected).orElseThrow();
    assertThat(name.runId()).isEqualTo(label.id());
    assertThat(RunLabel.of(name)).contains(label);
    assertThat(label.folder()).isEqualTo("sub-mika/ses-01");
  }

  @Test
  void theOnlyRunOfALessonHasNone() {
    RunLabel label = RunLabel.lesson("mika", "01");
    assertThat(label.id()).isEqualTo("sub-mika_ses-01_task-swing");
    assertThat(label.fileName("leadHand", "events.tsv"))
        .isEqualTo("sub-mika_ses-01_task-swing_tracksys-leadHand_events.tsv");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "a-b", "a_b", "ä", "a b", "../a"})
  void aLabelIsLettersAndDigits(String label) {
    assertThat(RunLabel.isLabel(label)).isFalse();
    assertThatThrownBy(() -> RunLabel.lesson(label, "01")).hasMessageContaining("player label");
    assertThatThrownBy(() -> RunLabel.lesson("mika", label)).hasMessageContaining("lesson label");
    assertThat(RunLabel.isLabel("Mika07")).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "motion",
        "sub-a_motion_",
        "sub-a_x_motion.tsv",
        "sub-a_sub-b_motion.tsv",
        "Sub-a_motion.tsv",
        "sub-_motion.tsv",
        "sub-a_.tsv"
      })
  void whatIsNoBidsNameIsNone(String name) {
    assertThat(MotionName.parse(name)).isEmpty();
  }

  @Test
  void aNameSpeaksForAnotherWhenItsEntitiesAgree() {
    MotionName data = MotionName.parse("sub-a_ses-1_task-t_motion.tsv").orElseThrow();
    assertThat(MotionName.parse("task-t_channels.tsv").orElseThrow().speaksFor(data)).isTrue();
    assertThat(MotionName.parse("sub-a_task-t_x.json").orElseThrow().speaksFor(data)).isTrue();
    assertThat(MotionName.parse("sub-b_task-t_x.json").orElseThrow().speaksFor(data)).isFalse();
    assertThat(MotionName.parse("run-1_x.json").orElseThrow().speaksFor(data)).isFalse();
    assertThat(data.isMotionTable()).isTrue();
    assertThat(data.ending()).isEqualTo("tsv");
    assertThat(MotionName.parse("ses-1_motion.tsv").orElseThrow().isMotionTable()).isFalse();
    assertThat(MotionName.parse("sub-a_motion.json").orElseThrow().isMotionTable()).isFalse();
    assertThat(MotionName.parse("sub-a_events.tsv").orElseThrow().isMotionTable()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "lead_hand, RIGHT, LEAD_HAND",
    "Lead Forearm, LEFT, LEAD_FOREARM",
    "left_hand, RIGHT, LEAD_HAND",
    "hand-left, RIGHT, LEAD_HAND",
    "LeftForearm, RIGHT, LEAD_FOREARM",
    "forearm right, LEFT, LEAD_FOREARM",
    "right_hand, LEFT, LEAD_HAND",
    "sacrum, LEFT, PELVIS",
    "Pelvis, RIGHT, PELVIS",
    "thorax, RIGHT, THORAX",
    "club-shaft, RIGHT, CLUB_SHAFT"
  })
  void aPointIsKnownByTheWordsOfOthers(String word, Handedness handed, BodyPoint point) {
    assertThat(PointWords.pointOf(word, handed)).contains(point);
  }

  @ParameterizedTest
  @CsvSource({"right_hand, RIGHT", "left_hand, LEFT", "hip, RIGHT", "wrist, LEFT", "hand, RIGHT"})
  void theTrailArmAndVagueWordsAreNoPoint(String word, Handedness handed) {
    assertThat(PointWords.pointOf(word, handed)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "lead_hand, true",
    "leadforearm, true",
    "sacrum, true",
    "left_hand, false",
    "hip, false"
  })
  void withoutASideLeftAndRightStayUnknown(String word, boolean known) {
    assertThat(PointWords.pointOf(word).isPresent()).isEqualTo(known);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-04-01T10:00:00.000000, 2026-04-01T10:00:00.012346, 0.012346",
    "2026-04-01T10:00:00, 2026-04-01T09:59:59.5, -0.5",
    "2026-04-01T10:00:00Z, 2026-04-01T12:00:01+02:00, 1",
    "2026-04-01T10:00:00-01:00, 2026-04-01T11:00:02Z, 2",
    "2026-03-31T23:59:59.999999, 2026-04-01T00:00:00, 0.000001"
  })
  void startsAreSecondsApart(String first, String second, double apartS) throws IOException {
    Path motion = Files.createDirectories(folder.resolve("motion"));
    Files.writeString(
        folder.resolve("sub-a_scans.tsv"),
        "filename\tacq_time\nmotion/a.tsv\t" + first + "\nmotion/b.tsv\t" + second + "\n");
    List<String> notices = new ArrayList<>();
    StartTimes times = StartTimes.of(motion, folder, notices);
    LocalDateTime a = times.of(motion.resolve("a.tsv")).orElseThrow();
    LocalDateTime b = times.of(motion.resolve("b.tsv")).orElseThrow();
    assertThat(StartTimes.secondsBetween(a, b)).isEqualTo(apartS);
    assertThat(times.of(motion.resolve("c.tsv"))).isEmpty();
    boolean bothCoarse = !first.contains(".") && !second.contains(".");
    assertThat(notices).hasSize(bothCoarse ? 1 : 0);
  }

  @ParameterizedTest
  @CsvSource({"UTF-16LE, 2", "UTF-16BE, 2", "UTF-8, 3", "ISO-8859-1, 0"})
  void aSmallFileIsReadInItsEncoding(String encoding, int markBytes) throws IOException {
    byte[] mark =
        switch (encoding) {
          case "UTF-16LE" -> new byte[] {(byte) 0xFF, (byte) 0xFE};
          case "UTF-16BE" -> new byte[] {(byte) 0xFE, (byte) 0xFF};
          case "UTF-8" -> new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
          default -> new byte[0];
        };
    assertThat(mark).hasSize(markBytes);
    byte[] text = "größer\t1\n".getBytes(Charset.forName(encoding));
    byte[] all = new byte[mark.length + text.length];
    System.arraycopy(mark, 0, all, 0, mark.length);
    System.arraycopy(text, 0, all, mark.length, text.length);
    Path file = Files.write(folder.resolve("t.tsv"), all);
    List<String> notices = new ArrayList<>();
    assertThat(TextFile.read(file, notices)).isEqualTo("größer\t1\n");
    assertThat(notices).hasSize(encoding.equals("UTF-8") ? 0 : 1);
  }

  @Test
  void aBigFileMayBeginWithAMarkAndHasNoZeros() {
    Path file = Path.of("t_motion.tsv");
    byte[] marked = "\uFEFF1".getBytes(StandardCharsets.UTF_8);
    assertThat(Encoding.textStart(file, marked, 4)).isEqualTo(3);
    assertThat(Encoding.textStart(file, marked, 2)).isZero();
    assertThat(Encoding.textStart(file, new byte[] {'1'}, 1)).isZero();
    byte[] late = new byte[70];
    Arrays.fill(late, (byte) '1');
    late[64] = 0;
    assertThat(Encoding.textStart(file, late, 70)).isZero();
    late[63] = 0;
    assertThatThrownBy(() -> Encoding.textStart(file, late, 70)).hasMessageContaining("UTF-16");
    for (byte[] wide : new byte[][] {{(byte) 0xFF, (byte) 0xFE}, {(byte) 0xFE, (byte) 0xFF}}) {
      assertThatThrownBy(() -> Encoding.textStart(file, wide, 2)).hasMessageContaining("UTF-16");
    }
  }

  @Test
  void aTableIsAddedToAndNeverChanged() throws IOException {
    Path file = folder.resolve("t.tsv");
    Files.writeString(file, "id\tnote\na\tkept\nb\tn/a\n");
    TableText table = TableText.read(file);
    table.put(row("a", "note", "other", "size", "3"));
    table.put(row("b", "note", "two\tlines\n", "size", ""));
    table.put(row("c", "size", "5", "note", " "));
    assertThat(table.text())
        .isEqualTo("id\tnote\tsize\na\tkept\t3\nb\ttwo lines\tn/a\nc\tn/a\t5\n");
  }

  private static Map<String, String> row(String id, String... cells) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put("id", id);
    for (int i = 0; i < cells.length; i += 2) {
      row.put(cells[i], cells[i + 1]);
    }
    return row;
  }
}
