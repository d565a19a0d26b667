package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.CellText;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/** Who writes into an archive: one at a time, whole or not at all, for the owner's eyes. */
class WritersTest {

  @TempDir private Path root;

  @Test
  void eightWritersAtOnceLoseNoRunNoStartAndNoPlayer() throws Exception {
    // Given: eight threads, each adding a run of one player to one lesson and a player of its own.
    // Expect: eight runs with a start each, nine players, every table whole.
    CountDownLatch go = new CountDownLatch(1);
    List<Throwable> failures = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    for (int k = 0; k < 8; k++) {
      int own = k;
      Thread thread = new Thread(() -> writeTwo(go, own));
      thread.setUncaughtExceptionHandler(
          (t, e) -> {
            synchronized (failures) {
              failures.add(e);
            }
          });
      threads.add(thread);
      thread.start();
    }
    go.countDown();
    for (Thread thread : threads) {
      thread.join();
    }
    assertThat(failures).isEmpty();
    List<Session> lessons = Archive.open(root).sessions();
    assertThat(lessons).hasSize(9);
    Session shared =
        lessons.stream().filter(l -> l.player().equals("mika")).findFirst().orElseThrow();
    assertThat(shared.runs()).hasSize(8).allMatch(run -> run.startedAt().isPresent());
    for (SessionRun run : shared.runs()) {
      assertThat(RecordingReader.readUnits(run)).singleElement().matches(u -> u.size() == 50);
    }
    assertThat(Files.readAllLines(root.resolve("participants.tsv"))).hasSize(10);
    assertThat(hidden()).noneMatch(name -> name.endsWith(".part"));
  }

  private void writeTwo(CountDownLatch go, int own) {
    try {
      go.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    RecordingWriter writer = RecordingWriter.into(root, "Lessons");
    Recording shared = Lessons.pelvisOnly(50, own);
    writer.writeNext(shared, "01", Lessons.NINE_O_CLOCK.plusMinutes(own));
    Player player = Player.unmeasured("own" + own, Handedness.LEFT);
    Recording second = new Recording(player.id(), player, shared.units(), List.of());
    writer.write(second, RunLabel.lesson(player.id(), "01"), Lessons.NINE_O_CLOCK);
  }

  private List<String> hidden() throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.map(f -> f.getFileName().toString()).filter(n -> n.startsWith(".")).toList();
    }
  }

  @Test
  void whoeverHoldsTheLockIsWaitedForAndMayLockAgain() throws Exception {
    List<String> order = new ArrayList<>();
    Thread other =
        ArchiveLock.whileWriting(
            root,
            () -> {
              Thread waits =
                  new Thread(() -> ArchiveLock.whileWriting(root, () -> order.add("second")));
              waits.start();
              assertThat(ArchiveLock.ifNobodyWrites(root, () -> order.add("again"))).isPresent();
              sleep(100);
              order.add("first");
              return waits;
            });
    other.join();
    assertThat(order).containsExactly("again", "first", "second");
    ArchiveLock recording = ArchiveLock.recording(root);
    assertThat(ArchiveLock.isRecordedInto(root)).isTrue();
    recording.close();
    recording.close();
    assertThat(ArchiveLock.isRecordedInto(root)).isFalse();
  }

  private static void sleep(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aWriteThatBreaksOffLeavesTheOldFileAndNothingBeside() throws IOException {
    Path file = root.resolve("page.html");
    WholeFile.write(file, "old");
    assertThatThrownBy(
            () ->
                WholeFile.write(
                    file,
                    out -> {
                      out.write(1);
                      throw new IOException("No space left on device");
                    }))
        .isInstanceOf(RecordingException.class)
        .hasMessageContaining("No space left");
    assertThatThrownBy(
            () ->
                WholeFile.writeText(
                    file,
                    out -> {
                      throw new IllegalStateException("a fault");
                    }))
        .hasMessage("a fault");
    assertThat(file).hasContent("old");
    assertThat(hidden()).isEmpty();
  }

  @Test
  void whatAKilledWriterLeftIsSweptAndALivingOnesIsNot() throws IOException {
    // A process number above what Linux gives (2^22), and our own.
    Path dead = Files.createFile(root.resolve(".page.html.999999999-1.part"));
    Path alive =
        Files.createFile(
            root.resolve(".page.html." + ProcessHandle.current().pid() + "-999999.part"));
    Path other = Files.createFile(root.resolve(".page.html.mine.part"));
    WholeFile.write(root.resolve("page.html"), "new");
    assertThat(dead).doesNotExist();
    assertThat(alive).exists();
    assertThat(other).exists();
  }

  @Test
  void whatIsMadeIsForTheOwnerOnlyAndWhatWasThereKeepsItsRights() throws IOException {
    assumeTrue(
        Files.getFileStore(root).supportsFileAttributeView("posix"),
        "this file system knows no owner");
    Path shared = Files.createFile(root.resolve("participants.tsv"));
    Files.writeString(shared, "participant_id\thandedness\n");
    Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString("rw-r--r--"));
    RecordingWriter.into(root, "Lessons")
        .write(Lessons.pelvisOnly(5, 1), RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);
    try (Stream<Path> all = Files.walk(root)) {
      for (Path made : all.filter(f -> !f.equals(root)).toList()) {
        String expect =
            made.equals(shared) ? "rw-r--r--" : Files.isDirectory(made) ? "rwx------" : "rw-------";
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(made)))
            .as(made.toString())
            .isEqualTo(expect);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+49 30 1234",
        "-thin",
        "@home",
        "'=quoted",
        "''-twice",
        "-",
        "=HYPERLINK(\"http://x\")",
        "it's thin",
        "'plain",
        "-12.3",
        "+4e5",
        "7-iron"
      })
  void aNoteComesBackAsItWasAndASpreadsheetRunsNone(String note) {
    // Source of the four signs: OWASP's page on CSV injection. Numbers stay numbers.
    String cell = CellText.written(note);
    boolean isNumber = note.matches("[-+][0-9.e]+");
    assertThat(cell.matches("[=+\\-@].*")).isEqualTo(isNumber);
    assertThat(CellText.read(cell)).isEqualTo(note);
    List<Mark> marks = List.of(new Mark(1.5, 0, "hit", note, note));
    EventsFile.write(root, RunLabel.lesson("mika", "01"), "pelvis", marks);
    Path file = root.resolve("sub-mika_ses-01_task-swing_tracksys-pelvis_events.tsv");
    assertThat(EventsFile.read(file, 0, new ArrayList<>())).isEqualTo(marks);
  }

  @Test
  void aCellHoldsNoTabNoReturnAndNoControlCharacter() {
    assertThat(CellText.written("\t=a\r\nb\u001b[31mc\u0000\u2028d")).isEqualTo("'=a b [31mc d");
    assertThat(CellText.written(" \n ")).isEmpty();
  }

  @Test
  void aRunThatIsKeptForARecorderIsGivenToNobodyElse() {
    RecordingWriter writer = RecordingWriter.into(root, "Lessons");
    Player mika = Lessons.pelvisOnly(5, 1).player();
    RunLabel kept = writer.keepNextRun(mika, "01");
    RunLabel imported = writer.writeNext(Lessons.pelvisOnly(5, 1), "01", Lessons.NINE_O_CLOCK);
    RunLabel next = writer.writeNext(Lessons.pelvisOnly(5, 1), "01", Lessons.NINE_O_CLOCK);
    writer.giveBack(kept);
    RunLabel free = writer.keepNextRun(mika, "01");
    assertThat(List.of(kept, imported, next, free))
        .containsExactly(
            RunLabel.run("mika", "01", 1),
            RunLabel.lesson("mika", "01"),
            RunLabel.run("mika", "01", 2),
            RunLabel.run("mika", "01", 1));
  }
}
