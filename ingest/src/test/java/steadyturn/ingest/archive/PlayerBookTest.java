package steadyturn.ingest.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.kept.KeptPlace;
import steadyturn.ingest.recording.Broken;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.sample.Handedness;

/** Who is in an archive; renamed, joined, handed over; sums. */
class PlayerBookTest {

  @TempDir static Path written;
  @TempDir Path root;
  @TempDir Path elsewhere;

  @BeforeAll
  static void writeTheArchive() throws IOException {
    SmallArchive.write(written);
  }

  @BeforeEach
  void copyTheArchive() {
    Broken.copy(written, root);
  }

  @Test
  void playersAreListedWithNameConsentAndLessons() {
    PlayerEntry mika = book().require("mika");
    assertThat(mika.shownName()).isEqualTo("Mika Sand");
    assertThat(mika.consent()).contains(new Consent(LocalDate.of(2025, 3, 31), "Jo Sand"));
    assertThat(mika.handed()).contains(Handedness.RIGHT);
    assertThat(mika.lessons())
        .extracting(LessonEntry::id)
        .containsExactly("sub-mika_ses-01", "sub-mika_ses-02");
    assertThat(book().require("mikado").lastDay()).contains(LocalDate.of(2025, 4, 7));
  }

  @ParameterizedTest(name = "\"{0}\" finds {1} players")
  @CsvSource({"MIKA, 2", "sand, 1", "Sánd, 1", "kad, 1", "noor, 0"})
  void playersAreFoundByAPartOfLabelOrName(String text, int found) {
    assertThat(book().players().stream().filter(p -> p.matches(text))).hasSize(found);
  }

  @Test
  void aRenamedPlayerKeepsAllAndIsReadAsBefore() throws IOException {
    String samples = Sums.of(table("mika", "01"));
    Sums.keep(root, book().require("mika").lessons().get(0));
    Relabelling.rename(root, "mika", "mara");
    PlayerEntry mara = book().require("mara");
    assertThat(mara.shownName()).isEqualTo("Mika Sand");
    assertThat(mara.lessons()).hasSize(2);
    assertThat(Sums.of(table("mara", "01"))).isEqualTo(samples);
    assertThat(Sums.look(root, mara.lessons().get(0)).isSound()).isTrue();
    assertThat(Archive.open(root.resolve("sub-mara")).sessions().get(0).runs().get(0).startedAt())
        .as("the scans file names the new tables")
        .isPresent();
    assertThat(SmallArchive.holding(root, "sub-mika_")).isEmpty();
    assertThat(book().of("mika")).isEmpty();
    assertThat(book().of("mikado")).isPresent();
  }

  /**
   * Given: the files in which a label stands alone, as the lesson's page and analyze write them.
   */
  @Test
  void aLabelThatStandsAloneIsChangedWhereItIsOne() throws IOException {
    Path notes = root.resolve(".steadyturn-lesson.json");
    Files.writeString(
        notes, "{\"player\" : \"mikado\", \"lesson\" : \"01\", \"goal\" : \"mikado\"}");
    Path values = root.resolve("derivatives/values.tsv");
    Files.writeString(values, "player\tclub\nmikado\tmikado\nmika\t7-iron\n");
    Path result = root.resolve("derivatives/result.json");
    Files.writeString(result, "{\"player\": {\"id\": \"mikado\", \"handed\": \"right\"}}");
    Relabelling.merge(root, "mikado", "mika");
    assertThat(notes)
        .hasContent("{\"player\" : \"mika\", \"lesson\" : \"03\", \"goal\" : \"mikado\"}");
    assertThat(values).hasContent("player\tclub\nmika\tmikado\nmika\t7-iron\n");
    assertThat(result).hasContent("{\"player\": {\"id\": \"mika\", \"handed\": \"right\"}}");
  }

  @Test
  void whatIsKeptOfAnswersNeitherKeepsAnOldLabelNorTravels() throws IOException {
    Path own = kept("mika", "01", "sub-mika");
    Path ofAnother = kept("mikado", "01", "\0sub-mika helped\0");
    Path zip = elsewhere.resolve("mika.zip");
    HandOver.pack(root, "mika", zip);
    Path other = Files.createDirectories(elsewhere.resolve("other"));
    HandOver.take(zip, other);
    assertThat(SmallArchive.holding(other, "desc-kept")).isEmpty();
    Relabelling.rename(root, "mika", "mara");
    assertThat(own).doesNotExist();
    assertThat(ofAnother).doesNotExist();
    assertThat(SmallArchive.holding(root, "sub-mika_")).isEmpty();
  }

  private Path kept(String player, String lesson, String bytes) throws IOException {
    Session session =
        Archive.open(root.resolve("sub-" + player + "/ses-" + lesson)).sessions().get(0);
    Path file = KeptPlace.of(session, "");
    Files.createDirectories(WholeFile.folderOf(file));
    return Files.writeString(file, bytes);
  }

  @Test
  void joinedPlayersKeepEveryLesson() {
    String other = Sums.of(table("mikado", "01"));
    Map<String, String> lessons = Relabelling.merge(root, "mikado", "mika");
    assertThat(lessons).containsEntry("01", "03");
    assertThat(book().require("mika").lessons())
        .extracting(LessonEntry::lesson)
        .containsExactly("01", "02", "03");
    assertThat(Sums.of(table("mika", "03"))).isEqualTo(other);
    assertThat(book().of("mikado")).isEmpty();
    assertThat(Participants.rows(root, new ArrayList<>())).hasSize(1);
  }

  @Test
  void aRenamingThatWasCutOffIsEndedByTheNextOne() throws IOException {
    Files.writeString(root.resolve(".steadyturn-relabelling"), "mika\tmara\n01\t01\n02\t02\n");
    Path moved =
        root.resolve("sub-mara/ses-01/motion")
            .resolve(String.valueOf(table("mika", "01").getFileName()).replace("mika", "mara"));
    Files.createDirectories(moved.getParent());
    Files.move(table("mika", "01"), moved);
    assertThat(Relabelling.unfinished(root)).contains(List.of("mika", "mara"));
    Relabelling.rename(root, "mika", "mara");
    assertThat(book().require("mara").lessons()).hasSize(2);
    assertThat(Relabelling.unfinished(root)).isEmpty();
  }

  @Test
  void twoSidesAreTwoPersons() throws IOException {
    Path players = root.resolve("participants.tsv");
    Files.writeString(
        players, Files.readString(players).replace("sub-mikado\tright", "sub-mikado\tleft"));
    assertThatThrownBy(() -> Relabelling.merge(root, "mikado", "mika"))
        .hasMessageContaining("not one person");
    assertThatThrownBy(() -> Relabelling.rename(root, "mikado", "mika"))
        .hasMessageContaining("has a player \"mika\" already");
    assertThatThrownBy(() -> Relabelling.rename(root, "mika", "mi ka"))
        .hasMessageContaining("letters and digits");
  }

  @Test
  void sumsSeeOneChangedByteAndALostFile() throws IOException {
    LessonEntry lesson = book().require("mika").lessons().get(0);
    assertThat(Sums.look(root, lesson).unknown()).hasSize(4);
    assertThat(Sums.keep(root, lesson)).isEqualTo(4);
    assertThat(Sums.keep(root, lesson)).isZero();
    assertThat(Sums.look(root, lesson).same()).isEqualTo(4);
    byte[] bytes = Files.readAllBytes(table("mika", "01"));
    bytes[bytes.length / 2] ^= 1;
    Files.write(table("mika", "01"), bytes);
    assertThat(Sums.look(root, lesson).changed()).hasSize(1);
    Files.delete(table("mika", "01"));
    assertThat(Sums.look(root, lesson).missing()).hasSize(1);
  }

  /** Source: FIPS 180-4's worked example of SHA-256 for the message "abc" (NIST, from memory). */
  @Test
  void theSumIsThatOfTheStandard() {
    assertThat(Sums.of(new byte[] {'a', 'b', 'c'}))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void aPackedPlayerIsTheSameElsewhere() throws IOException {
    Path zip = elsewhere.resolve("mika.zip");
    assertThat(HandOver.pack(root, "mika", zip)).isGreaterThan(8);
    Path other = elsewhere.resolve("other");
    Files.createDirectories(other);
    HandOver.Taken taken = HandOver.take(zip, other);
    assertThat(taken.label()).isEqualTo("mika");
    PlayerEntry there = PlayerBook.read(other, new ArrayList<>()).require("mika");
    assertThat(there.shownName()).isEqualTo("Mika Sand");
    assertThat(there.lessons()).isEqualTo(book().require("mika").lessons());
    assertThat(SmallArchive.holding(other, "mikado")).isEmpty();
    assertThat(HandOver.take(zip, other).files()).as("a second time").isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"../out.tsv", "sub-mika/../../out.tsv"})
  void aPackageThatReachesOutIsRefused(String name) throws IOException {
    Path zip = elsewhere.resolve("bad.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
      out.putNextEntry(new ZipEntry(name));
      out.write(1);
    }
    Path other = elsewhere.resolve("deep/other");
    Files.createDirectories(other);
    assertThatThrownBy(() -> HandOver.take(zip, other)).hasMessageContaining("outside itself");
    assertThat(elsewhere.resolve("deep/out.tsv")).doesNotExist();
    assertThat(other.resolve("out.tsv")).doesNotExist();
  }

  @Test
  void aPackageThatWasChangedOnTheWayIsRefusedWhole() throws IOException {
    Path zip = elsewhere.resolve("mika.zip");
    HandOver.pack(root, "mika", zip);
    try (var files = java.nio.file.FileSystems.newFileSystem(zip)) {
      Files.writeString(files.getPath("participants.tsv"), "participant_id\nsub-mika\n");
    }
    Path other = elsewhere.resolve("other");
    Files.createDirectories(other);
    assertThatThrownBy(() -> HandOver.take(zip, other))
        .hasMessageContaining("was changed on the way");
    assertThat(SmallArchive.holding(other, "sub-")).isEmpty();
  }

  private PlayerBook book() {
    return PlayerBook.read(root, new ArrayList<>());
  }

  private Path table(String player, String lesson) {
    Session session =
        Archive.open(root.resolve("sub-" + player + "/ses-" + lesson)).sessions().get(0);
    return session.runs().get(0).units().get(0).table();
  }
}
