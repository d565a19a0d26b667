package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Processes that write into one archive at once, that are killed, that run out of disk. */
class WritersTest {

  private static final int ROWS = 3000;

  /** The long form is twenty kills: -Dsteadyturn.kills=20. */
  private static final int KILLS = Integer.getInteger("steadyturn.kills", 4);

  @TempDir private Path folder;

  private String[] importing(Path archive) throws IOException {
    Path table = folder.resolve("table.csv");
    if (!Files.exists(table)) {
      StringBuilder rows =
          new StringBuilder(
              "Time (s),Gyroscope X (deg/s),Gyroscope Y (deg/s),Gyroscope Z (deg/s),"
                  + "Accelerometer X (g),Accelerometer Y (g),Accelerometer Z (g)\n");
      for (int i = 0; i < ROWS; i++) {
        rows.append(i / 100.0).append(",0.01,-0.02,0.03,0.001,0.002,1.00").append(i % 3);
        rows.append('\n');
      }
      Files.writeString(table, rows);
    }
    return new String[] {
      "import",
      "--unchecked",
      "--map",
      "time-g-degrees",
      "--player",
      "noor",
      "--out",
      archive.toString(),
      table.toString()
    };
  }

  private static String[] simulating(Path archive, int seed) {
    return new String[] {
      "simulate",
      "--out",
      archive.toString(),
      "--swings",
      "1",
      "--waggles",
      "0",
      "--seed",
      Integer.toString(seed),
      "--player",
      "p" + seed
    };
  }

  private static List<SessionRun> runs(Path archive) {
    return Archive.open(archive).sessions().stream().flatMap(s -> s.runs().stream()).toList();
  }

  @Test
  void eightProcessesAtOnceEachKeepWhatTheySay() throws Exception {
    // Given: six imports of one table into one lesson and two simulated lessons, all at once.
    // Expect: all say done; eight runs, six of 3000 samples; three players.
    Path archive = folder.resolve("archive");
    String[] words = importing(archive);
    List<CommandLineProcess> all = new ArrayList<>();
    for (int k = 0; k < 8; k++) {
      all.add(CommandLineProcess.start(folder, k < 6 ? words : simulating(archive, k)));
    }
    List<String> said = new ArrayList<>();
    for (CommandLineProcess one : all) {
      assertThat(one.exitCode()).as(one.err()).isZero();
      said.add(one.out().substring(0, one.out().indexOf(':')));
    }
    assertThat(said).doesNotHaveDuplicates();
    assertThat(runs(archive).stream().map(SessionRun::id))
        .containsExactlyInAnyOrderElementsOf(said);
    for (SessionRun run : runs(archive)) {
      List<UnitStream> units = RecordingReader.readUnits(run);
      assertThat(run.units()).allMatch(unit -> unit.startedAt().isPresent());
      assertThat(units).hasSize(run.player().equals("noor") ? 1 : 3);
      assertThat(units.get(0).size() == ROWS).isEqualTo(run.player().equals("noor"));
    }
    assertThat(Files.readAllLines(archive.resolve("participants.tsv"))).hasSize(4);
  }

  @Test
  void killedAtAnyMomentAWriterLeavesWhatWasThereAndNothingHalf() throws Exception {
    // Given: imports and simulations killed (signal 9) somewhere in their time, seed 12. Expect:
    // after each, every run in the archive reads whole; every run that was said is there.
    Random random = new Random(12);
    Path archive = folder.resolve("archive");
    long fromNanos = System.nanoTime();
    CommandLineProcess first = CommandLineProcess.start(folder, importing(archive));
    assertThat(first.exitCode()).as(first.err()).isZero();
    long usualMs = (System.nanoTime() - fromNanos) / 1_000_000;
    List<String> said = new ArrayList<>(List.of("sub-noor_ses-01_task-swing"));
    for (int k = 0; k < KILLS; k++) {
      String[] words = k % 2 == 0 ? importing(archive) : simulating(archive, k);
      CommandLineProcess one = CommandLineProcess.start(folder, words);
      Thread.sleep((long) (usualMs * (0.3 + 0.8 * random.nextDouble())));
      one.process().destroyForcibly().waitFor();
      if (one.out().contains(":")) {
        said.add(one.out().substring(0, one.out().indexOf(':')));
      }
      List<String> there = new ArrayList<>();
      for (SessionRun run : runs(archive)) {
        there.add(run.id());
        int samples = RecordingReader.readUnits(run).get(0).size();
        assertThat(samples == ROWS || !run.player().equals("noor")).as(run.id()).isTrue();
        assertThat(samples).isGreaterThan(1000);
      }
      assertThat(there).containsAll(said);
    }
    CommandLineProcess last = CommandLineProcess.start(folder, importing(archive));
    assertThat(last.exitCode()).as(last.err()).isZero();
    try (Stream<Path> files = Files.walk(archive)) {
      assertThat(files.map(Path::toString)).noneMatch(name -> name.endsWith(".part"));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"TERM", "terminal"})
  void endedFromOutsideARecordingSaysItsLastWords(String end) throws Exception {
    // Given: a unit at 500 Hz, recorded by a process that gets SIGTERM, or whose terminal (made by
    // the program script) is closed. Expect: it ends within ten seconds, and what it says it kept
    // is what the table holds.
    assumeTrue(isAllowed("socat", "-V") && isAllowed("script", "-V"), "no socat or no script");
    Path port = folder.resolve("port");
    Path archive = folder.resolve("archive");
    Path said = folder.resolve("said");
    try (Playing unit = Playing.at(port)) {
      String record =
          program()
              + String.join(
                  "' '", "record", archive.toString(), "pelvis=" + port, "--player", "mika")
              + "' --handed right --lesson 01 >'"
              + said
              + "' 2>&1";
      Process process =
          end.equals("TERM")
              ? new ProcessBuilder("sh", "-c", "exec " + record).start()
              : new ProcessBuilder("script", "-qec", record, "/dev/null").start();
      waitForTable(archive);
      if (end.equals("TERM")) {
        process.destroy();
      } else {
        process.destroyForcibly();
      }
      for (int k = 0; k < 200 && !Files.readString(said).contains(" samples "); k++) {
        Thread.sleep(50);
      }
      unit.stop();
      int read = RecordingReader.readUnits(runs(archive).get(0)).get(0).size();
      assertThat(Files.readString(said))
          .containsPattern("pelvis +" + read + " samples kept, 0 lost");
      if (end.equals("TERM")) {
        assertThat(process.waitFor()).isZero(); // an end like "quit"
      }
    }
  }

  @Test
  void aTerminalThatIsClosedWhileOneTypesLosesNothing() throws Exception {
    // Given: a unit at 500 Hz, recorded at a terminal (made by the program script) that is closed.
    // Expect: exit code 0, as after "quit": all that came is on the disk.
    assumeTrue(isAllowed("socat", "-V") && isAllowed("script", "-V"), "no socat or no script");
    Path port = folder.resolve("port");
    Path archive = folder.resolve("archive");
    Path code = folder.resolve("code");
    try (Playing unit = Playing.at(port)) {
      String record =
          "trap '' HUP; "
              + program().replace(" -cp ", " -Dsteadyturn.typed=true -cp ")
              + String.join(
                  "' '", "record", archive.toString(), "pelvis=" + port, "--player", "mika")
              + "' --handed right --lesson 01 --agreed 2>/dev/null; echo $? >'"
              + code
              + "'";
      ProcessBuilder terminal = new ProcessBuilder("script", "-qec", record, "/dev/null");
      terminal.environment().put("TERM", "xterm");
      Process process = terminal.start();
      waitForTable(archive);
      process.destroyForcibly();
      for (int k = 0; k < 400 && !Files.exists(code); k++) {
        Thread.sleep(50);
      }
      Thread.sleep(100);
      unit.stop();
      assertThat(Files.readString(code).strip()).isEqualTo("0");
      assertThat(RecordingReader.readUnits(runs(archive).get(0)).get(0).size()).isPositive();
    }
  }

  /** A still unit at 500 Hz that plays behind a port. */
  private record Playing(VirtualPort port, VirtualUnit unit, Thread thread)
      implements AutoCloseable {

    static Playing at(Path path) throws Exception {
      VirtualPort port = VirtualPort.at(path);
      VirtualUnit unit =
          new VirtualUnit(
              still(60), new BinaryFrameEncoder(16, 2000), port, UnitFaults.NONE, 0, 1, 1);
      Thread thread = new Thread(unit, "virtual unit");
      thread.start();
      return new Playing(port, unit, thread);
    }

    void stop() throws InterruptedException {
      unit.stop();
      thread.join();
    }

    @Override
    public void close() throws IOException {
      unit.stop();
      port.close();
    }
  }

  private static void waitForTable(Path archive) throws Exception {
    Path table =
        archive.resolve(
            "sub-mika/ses-01/motion/sub-mika_ses-01_task-swing_tracksys-pelvis_run-01_motion.tsv");
    for (int k = 0; k < 600 && !Files.exists(table); k++) {
      Thread.sleep(50);
    }
    Thread.sleep(700);
  }

  private static UnitStream still(double lengthS) {
    int samples = (int) (500 * lengthS);
    double[] timeS = new double[samples];
    double[][] accelMps2 = new double[3][samples];
    for (int i = 0; i < samples; i++) {
      timeS[i] = i / 500.0;
      accelMps2[2][i] = 9.80665;
    }
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "V-1", 500, 156.9, 34.9, false);
    return new UnitStream(facts, timeS, accelMps2, new double[3][samples]);
  }

  @Test
  void aDiskWithoutRoomEndsAnImportWithOneLineAndExitCodeOne() throws Exception {
    // Given: an archive on a file system of 200 KB, where a machine lets us make one (a name space
    // of our own), and a table that needs 180 KB there twice. Expect: the second import fails with
    // one line; the first one's run reads whole; nothing half is left.
    assumeTrue(isAllowed("unshare", "-rm", "true"), "no file system of our own can be made here");
    Path archive = Files.createDirectories(folder.resolve("small"));
    String words = String.join("' '", importing(archive));
    String program = program();
    String script =
        "mount -t tmpfs -o size=260k none '"
            + archive
            + "' || exit 77; "
            + (program + words + "'; echo first $?; ")
            + (program + words + "'; echo second $?; ")
            + "find '"
            + archive
            + "' -name '*.part*'; "
            + (program + "check' '" + archive + "'; echo check $?");
    Process shell =
        new ProcessBuilder("unshare", "-rm", "sh", "-c", script).redirectErrorStream(true).start();
    String said = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assumeTrue(shell.waitFor() != 77, "no file system of our own can be made here");
    assertThat(said).contains("first 0").contains("second 1").contains("the disk is full");
    assertThat(said).doesNotContain(".part").contains("check 0");
  }

  private static String program() {
    return "'"
        + Path.of(System.getProperty("java.home"), "bin", "java")
        + "' -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp '"
        + System.getProperty("java.class.path")
        + "' steadyturn.cli.Main '";
  }

  private static boolean isAllowed(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }
}
