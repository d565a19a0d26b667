package steadyturn.ingest.recording.dataset;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.recording.Broken;
import steadyturn.ingest.recording.Lessons;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.DatasetFiles;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/**
 * An archive of two players: mika with lesson 01 (runs 1, 2 and 10; run 2 was recorded first) and
 * lesson 02, noor with lesson 01.
 */
class ArchiveTest {

  @TempDir static Path written;
  @TempDir Path root;

  @BeforeEach
  void copyTheArchive() {
    Broken.copy(written, root);
  }

  @BeforeAll
  static void writeTheArchive() {
    RecordingWriter writer = RecordingWriter.into(written, "Lessons of the test range");
    Recording mika = Lessons.pelvisOnly(10, 1);
    writer.write(mika, RunLabel.run("mika", "01", 10), Lessons.NINE_O_CLOCK.plusMinutes(9));
    writer.write(mika, RunLabel.run("mika", "01", 1), Lessons.NINE_O_CLOCK.plusMinutes(5));
    writer.write(mika, RunLabel.run("mika", "01", 2), Lessons.NINE_O_CLOCK);
    writer.write(mika, RunLabel.lesson("mika", "02"), Lessons.NINE_O_CLOCK.plusDays(7));
    writer.write(
        new Recording("noor", Player.unmeasured("noor", Handedness.RIGHT), mika.units(), List.of()),
        RunLabel.lesson("noor", "01"),
        Lessons.NINE_O_CLOCK);
  }

  @ParameterizedTest(name = "\"{0}\" holds {1} lessons and {2} runs")
  @CsvSource({
    "'', 3, 5",
    "sub-mika, 2, 4",
    "sub-mika/ses-01, 1, 3",
    "sub-mika/ses-01/motion, 1, 3",
    "sub-mika/ses-01/motion/sub-mika_ses-01_task-swing_tracksys-pelvis_run-10_motion.tsv, 1, 1"
  })
  void anyPlaceInTheArchiveCanBeOpened(String path, int lessons, int runs) {
    Archive archive = Archive.open(root.resolve(path));
    assertThat(archive.root()).isEqualTo(root);
    assertThat(archive.sessions()).hasSize(lessons);
    assertThat(archive.sessions().stream().mapToInt(s -> s.runs().size()).sum()).isEqualTo(runs);
    assertThat(RecordingReader.read(archive.sessions().get(0).runs().get(0)).recording().units())
        .hasSize(1);
  }

  @Test
  void runsComeInTheOrderInWhichTheyWereRecorded() {
    assertThat(Archive.open(root.resolve("sub-mika/ses-01")).sessions().get(0).runs())
        .extracting(SessionRun::id)
        .containsExactly(
            "sub-mika_ses-01_task-swing_run-02",
            "sub-mika_ses-01_task-swing_run-01",
            "sub-mika_ses-01_task-swing_run-10");
  }

  @Test
  void withoutStartTimesRunsComeByNumber() throws IOException {
    Files.delete(root.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv"));
    Session lesson = Archive.open(root.resolve("sub-mika/ses-01")).sessions().get(0);
    assertThat(lesson.runs())
        .extracting(r -> r.id().substring(r.id().length() - 2))
        .containsExactly("01", "02", "10");
  }

  @Test
  void theRunsBeforeOneAreAtHandForTheWearStepsTheyHold() {
    // Given: only run 10 asked for. Expect: runs 2 and 1 are known as the earlier ones.
    Session lesson =
        Archive.open(
                root.resolve(
                    "sub-mika/ses-01/motion/"
                        + "sub-mika_ses-01_task-swing_tracksys-pelvis_run-10_motion.tsv"))
            .sessions()
            .get(0);
    assertThat(lesson.before(lesson.runs().get(0)))
        .extracting(r -> r.id().substring(r.id().length() - 2))
        .containsExactly("02", "01");
  }

  @Test
  void aFileWithAnotherNameIsPassedOverAndNamed() throws IOException {
    Files.writeString(root.resolve("sub-mika/ses-01/motion/swing(2)_motion.tsv"), "1\n");
    Archive archive = Archive.open(root);
    assertThat(archive.notices()).singleElement().asString().contains("swing(2)_motion.tsv");
    assertThat(archive.sessions()).hasSize(3);
  }

  @Test
  void resultsInTheDerivativesFolderAreNoRecordings() throws IOException {
    Path folder = DatasetFiles.derivatives(root, "steadyturn", "0.1.0").resolve("sub-mika");
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("sub-mika_task-swing_tracksys-pelvis_motion.tsv"), "1\n");
    assertThat(Archive.open(root).sessions()).hasSize(3);
  }

  @Test
  void aNewRunLeavesEveryFileThatIsThereAsItIs() throws IOException {
    // Given: the bytes of all files. Expect: after one more run of mika the same bytes in all but
    // the scans file of that lesson, which has its old lines first.
    Map<Path, String> before = texts();
    Path scans = root.resolve("sub-mika/ses-02/sub-mika_ses-02_scans.tsv");
    RecordingWriter writer = RecordingWriter.into(root, "another name");
    RunLabel next =
        writer.writeNext(Lessons.pelvisOnly(10, 5), "02", Lessons.NINE_O_CLOCK.plusDays(8));
    assertThat(next).isEqualTo(RunLabel.run("mika", "02", 1));
    Map<Path, String> after = texts();
    before.forEach(
        (file, text) -> {
          if (file.equals(scans)) {
            assertThat(after.get(file)).startsWith(text);
          } else {
            assertThat(after.get(file)).as(file.toString()).isEqualTo(text);
          }
        });
    assertThat(after.keySet()).noneMatch(f -> f.toString().endsWith(".part"));
  }

  @Test
  void aRunThatIsThereIsNeverWrittenOver() {
    RecordingException told =
        catchThrowableOfType(
            RecordingException.class,
            () ->
                RecordingWriter.into(root, "x")
                    .write(
                        Lessons.pelvisOnly(10, 5),
                        RunLabel.lesson("mika", "02"),
                        Lessons.NINE_O_CLOCK));
    assertThat(told.getMessage())
        .contains("sub-mika_ses-02_task-swing is already there. Choose another lesson or run");
  }

  private Map<Path, String> texts() throws IOException {
    Map<Path, String> texts = new TreeMap<>();
    try (Stream<Path> files = Files.walk(root)) {
      files.filter(Files::isRegularFile).forEach(f -> texts.put(f, Broken.text(f)));
    }
    return texts;
  }
}
