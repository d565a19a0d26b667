package steadyturn.ingest.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.recording.Broken;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.table.RecordingException;

/** A player who is forgotten is found by no search; who only has a like name keeps everything. */
class ForgettingTest {

  @TempDir static Path written;
  @TempDir Path root;

  @BeforeAll
  static void writeTheArchive() throws IOException {
    SmallArchive.write(written);
  }

  @BeforeEach
  void copyTheArchive() {
    Broken.copy(written, root);
  }

  @Test
  void noByteNamesThePlayerAndTheOtherOneIsAsBefore() throws IOException {
    Map<Path, String> before = sumsOf("sub-mikado");
    Forgotten done = Forgetting.forget(root, "mika");
    assertThat(done.left()).isEmpty();
    assertThat(SmallArchive.holding(root, "mika").stream().filter(f -> !f.contains("mikado")))
        .as("files that hold mika in the name of mikado alone")
        .containsExactlyInAnyOrder(
            "derivatives/all.tsv",
            "derivatives/steadyturn/calibration/unit-7_date-2025-03-31_calibration.json",
            "participants.tsv",
            "README.md");
    assertThat(SmallArchive.holding(root, "Sand")).isEmpty();
    for (String file : List.of("derivatives/all.tsv", "participants.tsv", "README.md")) {
      assertThat(Files.readString(root.resolve(file)).replace("mikado", ""))
          .doesNotContainIgnoringCase("mika");
    }
    Map<Path, String> after = sumsOf("sub-mikado");
    assertThat(after.keySet()).isEqualTo(before.keySet());
    after.forEach(
        (file, sum) -> {
          if (!file.toString().endsWith("_events.tsv")) {
            assertThat(sum).as(file.toString()).isEqualTo(before.get(file));
          }
        });
    assertThat(done.rowsErased()).as("its lines in all.tsv and participants.tsv").isEqualTo(2);
    assertThat(done.textsChanged()).contains(Path.of("README.md"));
  }

  @Test
  void aNoteOfAnotherPlayerKeepsItsPlaceAndItsOtherWords() throws IOException {
    Forgetting.forget(root, "mika");
    try (var files = Files.walk(root.resolve("sub-mikado"))) {
      Path events =
          files.filter(f -> f.toString().endsWith("_events.tsv")).findFirst().orElseThrow();
      assertThat(Files.readString(events))
          .contains("0.000000\t0.000000\tnote\tn/a\tas someone did; better than someone");
    }
  }

  @Test
  void aCalibrationKeepsItsNumbers() throws IOException {
    Forgetting.forget(root, "mika");
    String json =
        Files.readString(
            root.resolve(
                "derivatives/steadyturn/calibration/unit-7_date-2025-03-31_calibration.json"));
    assertThat(json).contains("1.25", "sub-mikado").doesNotContain("sub-mika\"", "sub-mika_");
  }

  /** Given: a forgetting cut off after some of its own files went, at places drawn by a seed. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void whatWasCutOffIsEndedByTheNextOne(long seed) throws IOException {
    Forgetting.begin(root, "mika");
    Random random = new Random(seed);
    List<Path> own = new ArrayList<>();
    for (Path top : ArchiveWalk.topmost(root, new PlayerNames("mika", "")::isOn)) {
      own.addAll(ArchiveWalk.files(top));
    }
    for (Path file : own) {
      if (random.nextBoolean()) {
        Files.delete(file);
      }
    }
    if (seed % 2 == 0) {
      Files.delete(root.resolve("participants.tsv"));
    }
    assertThat(Forgetting.unfinished(root)).contains("mika");
    assertThat(Forgetting.forget(root, "mika").isWhole()).isTrue();
    assertThat(SmallArchive.holding(root, "sub-mika_")).isEmpty();
    assertThat(SmallArchive.holding(root, "Sand")).isEmpty();
    assertThat(Forgetting.unfinished(root)).isEmpty();
    assertThat(root.resolve("sub-mikado")).isDirectory();
  }

  @Test
  void whatCannotBeLookedIntoIsNamedAndKeepsTheIntent() throws IOException {
    Files.write(root.resolve("old.zip"), "PK\0 sub-mika/ses-01".getBytes(StandardCharsets.UTF_8));
    Forgotten done = Forgetting.forget(root, "mika");
    assertThat(done.left()).containsExactly(Path.of("old.zip"));
    Files.delete(root.resolve("old.zip"));
    assertThat(Forgetting.forget(root, "mika").isWhole()).isTrue();
  }

  /** Given: a name over the edge of two windows, one at their edge that is part of a word. */
  @Test
  void aNameIsFoundInALargeFileWhereverItStands() throws IOException {
    Path file = root.resolve("large.bin");
    for (int at : new int[] {0, (1 << 20) - 3, (1 << 20) - 4096, (1 << 20) - 4097, 2_000_000}) {
      byte[] bytes = new byte[2_000_004];
      System.arraycopy("mika".getBytes(StandardCharsets.UTF_8), 0, bytes, at, 4);
      Files.write(file, bytes);
      assertThat(ArchiveWalk.holds(file, new PlayerNames("mika", "").ofWords())).isTrue();
      if (at > 0) {
        bytes[at - 1] = 'x';
        Files.write(file, bytes);
        assertThat(ArchiveWalk.holds(file, new PlayerNames("mika", "").ofWords())).isFalse();
      }
    }
  }

  @Test
  void aTableInAnOldEncodingLosesItsLinesToo() throws IOException {
    Path players = root.resolve("participants.tsv");
    Files.write(
        players,
        Files.readString(players)
            .replace("Mika Sand", "Mika S\u00e4nd")
            .getBytes(StandardCharsets.ISO_8859_1));
    assertThat(Forgetting.forget(root, "mika").isWhole()).isTrue();
    assertThat(Files.readString(players)).contains("sub-mikado").doesNotContain("sub-mika\t");
  }

  @Test
  void anUnknownLabelChangesNothing() {
    assertThatThrownBy(() -> Forgetting.forget(root, "mik"))
        .isInstanceOf(RecordingException.class)
        .hasMessageContaining("Is it mika, mikado?");
    assertThat(Forgetting.unfinished(root)).isEmpty();
  }

  @Test
  void nobodyIsForgottenWhileARecordingRuns() {
    try (ArchiveLock recording = ArchiveLock.recording(root)) {
      assertThat(recording).isNotNull();
      assertThatThrownBy(() -> Forgetting.forget(root, "mika"))
          .hasMessageContaining("is being recorded into");
    }
  }

  @Test
  void aLabelOfDigitsIsNoWord() {
    PlayerNames names = new PlayerNames("01", "");
    assertThat(names.ofWords().matcher("ses-01 run-01 sub-011").find()).isFalse();
    assertThat(names.ofWords().matcher("x sub-01_y").find()).isTrue();
  }

  private Map<Path, String> sumsOf(String folder) {
    Map<Path, String> sums = new TreeMap<>();
    ArchiveWalk.files(root.resolve(folder)).forEach(f -> sums.put(f, Sums.of(f)));
    return sums;
  }
}
