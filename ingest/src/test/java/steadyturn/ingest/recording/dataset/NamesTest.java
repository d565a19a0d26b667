package steadyturn.ingest.recording.dataset;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of files and instants as they are written and read. */
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
    StartTimes times = StartTimes.of(motion, folder, new Folders.Lists(), notices);
    LocalDateTime a = times.of(motion.resolve("a.tsv")).orElseThrow();
    LocalDateTime b = times.of(motion.resolve("b.tsv")).orElseThrow();
    assertThat(StartTimes.secondsBetween(a, b)).isEqualTo(apartS);
    assertThat(times.of(motion.resolve("c.tsv"))).isEmpty();
    boolean bothCoarse = !first.contains(".") && !second.contains(".");
    assertThat(notices).hasSize(bothCoarse ? 1 : 0);
  }
}
