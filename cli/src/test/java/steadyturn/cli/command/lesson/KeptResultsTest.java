package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.cli.CommandLineRun;
import steadyturn.fusion.calibrate.AxisMatrix;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.kept.Basis;
import steadyturn.ingest.kept.KeptAnswer;
import steadyturn.ingest.kept.KeptPlace;
import steadyturn.ingest.kept.LessonFiles;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Session;

/**
 * Results that are kept are the same to the last bit, and are never used once anything they rest on
 * has changed: what a command says then is what it says where nothing was ever kept.
 */
class KeptResultsTest {

  private static final String CLAIM = "claim\t";

  @TempDir static Path made;
  @TempDir Path folder;

  private Path root;

  /** Four balls of an invented player with two clubs. */
  @BeforeAll
  static void aLesson() throws IOException {
    run(
        "simulate --swings 4 --waggles 0 --rate 100 --unit raw --player mika --lesson 01 --seed 7 --club"
            + " 7-iron,driver --out",
        made);
    try (Stream<Path> files = Files.walk(made)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.setLastModifiedTime(file, FileTime.fromMillis(0));
      }
    }
  }

  @BeforeEach
  void aCopyOfIt() throws IOException {
    root = folder.resolve("archive");
    copy(root);
  }

  private static void copy(Path to) throws IOException {
    try (Stream<Path> files = Files.walk(made)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = to.resolve(made.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
  }

  @Test
  void everyFormIsTheSameFromKeptResultsByteForByte() throws IOException {
    Map<String, String> fresh = everyForm();
    assertThat(Files.exists(place(""))).isTrue();
    assertThat(Files.exists(place("curves"))).isTrue();
    FileTime before = Files.getLastModifiedTime(place(""));
    assertThat(everyForm()).isEqualTo(fresh);
    assertThat(Files.getLastModifiedTime(place("")).compareTo(before)).isGreaterThanOrEqualTo(0);
  }

  /**
   * Given: tables of a lesson of which nothing is kept, with a calibration made 20 days after it.
   * Expect: the same tables from kept results, each file byte for byte; the calibration's day and
   * that it came later stand in them.
   */
  @Test
  void tablesAreTheSameFromKeptResultsByteForByte() throws IOException {
    CalibrationStore.of(root).save(UnitCalibration.none(pelvisSerial(), LocalDate.of(2000, 1, 21)));
    Map<String, String> fresh = tables();
    assertThat(Files.exists(place("curves"))).isFalse();
    written("report", "html");
    assertThat(Files.exists(place("curves"))).isTrue();
    assertThat(tables()).isEqualTo(fresh);
    assertThat(fresh.get("recordings.csv"))
        .contains("pelvis:reading.calibrated-later", "pelvis:2000-01-21", "0.1.0");
  }

  private String pelvisSerial() throws IOException {
    Path facts =
        root.resolve(
            "sub-mika/ses-01/motion/sub-mika_ses-01_task-swing_tracksys-pelvis_motion.json");
    return new ObjectMapper().readTree(facts.toFile()).path("DeviceSerialNumber").asText();
  }

  private Map<String, String> tables() throws IOException {
    Path out = Files.createTempDirectory(folder, "tables");
    CommandLineRun run =
        CommandLineRun.of(
            "export",
            root.toString(),
            "--tables",
            "recordings,results,key_positions,curves",
            "--out",
            out.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.toList()) {
        texts.put(String.valueOf(file.getFileName()), Files.readString(file));
      }
    }
    return texts;
  }

  private Map<String, String> everyForm() throws IOException {
    Map<String, String> told = new TreeMap<>();
    for (String form : List.of("table", "json", "html")) {
      told.put("progress " + form, written("progress mika", form));
      told.put("compare " + form, written("compare", form));
    }
    told.put("report html", written("report", "html"));
    told.put("report json", written("report --for player", "json"));
    return told;
  }

  private String written(String command, String form) throws IOException {
    Path out = Files.createTempDirectory(folder, "out");
    List<String> words = new ArrayList<>(List.of(command.split(" ")));
    words.addAll(List.of(root.toString(), "--format", form, "--out", out.toString()));
    if (form.equals("table") || (!command.startsWith("report") && form.equals("json"))) {
      return CommandLineRun.of(words.toArray(String[]::new)).out();
    }
    Path page = Path.of(CommandLineRun.of(words.toArray(String[]::new)).out().strip());
    return Files.readString(page);
  }

  /** Given: a kept result whose club was exchanged. Expect: told, as nothing else was read. */
  @Test
  void aKeptResultIsWhatIsShown() throws IOException {
    progress();
    List<String> claims =
        head().stream().filter(l -> l.startsWith(CLAIM)).map(l -> l.substring(6)).toList();
    Session lesson = session();
    List<Path> files = new LessonFiles().of(lesson);
    ByteBuffer bytes = KeptAnswer.find(place(""), root, files, claims::equals).orElseThrow();
    KeptLesson kept = KeptLesson.of(bytes);
    LessonResult result = kept.results().get(0);
    List<SwingResult> swings =
        result.swings().stream()
            .map(
                s ->
                    new SwingResult(
                        s.number(),
                        "spoon",
                        s.kind(),
                        s.flags(),
                        s.events(),
                        s.measures(),
                        List.of()))
            .toList();
    LessonResult other =
        new LessonResult(
            result.recording(),
            result.player(),
            result.aim(),
            result.units(),
            swings,
            result.notices());
    Basis basis = KeptAnswer.look(root, files).orElseThrow();
    KeptLesson exchanged =
        new KeptLesson(List.of(other), kept.marks(), kept.rehearsals(), kept.notices());
    KeptAnswer.keep(place(""), basis, files, claims, exchanged.bytes());
    assertThat(progress()).contains("\"club\" : \"spoon\"");
    Path players = root.resolve("participants.tsv");
    Files.writeString(players, Files.readString(players) + "sub-noor\tleft\tn/a\tn/a\tn/a\n");
    assertThat(progress()).as("another player's line").contains("spoon");
  }

  @Test
  void aChangedTableIsReadAgain() throws IOException {
    assertRecomputed(
        () -> {
          Path table = session().runs().get(0).units().get(0).table();
          sameSizeAndTime(table, "\t0.1", "\t0.2");
        });
  }

  @Test
  void aCorrectedNoteIsReadAgain() throws IOException {
    assertRecomputed(
        () -> {
          for (Path file : new LessonFiles().of(session())) {
            if (file.toString().endsWith("_events.tsv")) {
              sameSizeAndTime(file, "7-iron", "6-iron");
            }
          }
        });
    assertThat(progress()).contains("6-iron").doesNotContain("7-iron");
  }

  @Test
  void anotherSizeOfThePlayerIsReckonedWith() throws IOException {
    assertRecomputed(
        () -> {
          Path players = root.resolve("participants.tsv");
          List<String> lines = Files.readAllLines(players);
          String[] cells = lines.get(1).split("\t", -1);
          cells[2] = "300"; // pelvis_width
          Files.write(players, List.of(lines.get(0), String.join("\t", cells)));
        });
  }

  @Test
  void aNewCalibrationIsReckonedWith() throws IOException {
    assertRecomputed(
        () -> {
          var wider =
              new UnitCalibration.Correction(
                  new Vector3(0, 0, 0),
                  new AxisMatrix(
                      new Vector3(1.03, 0, 0), new Vector3(0, 1.03, 0), new Vector3(0, 0, 1.03)));
          LocalDate day = LocalDate.of(2026, 1, 2);
          for (String line : head()) {
            if (line.startsWith("claim\tcalibration\t")) {
              CalibrationStore.of(root)
                  .save(
                      new UnitCalibration(
                          line.split("\t", -1)[2],
                          day,
                          9.80665,
                          wider,
                          new UnitCalibration.Correction(new Vector3(0, 0, 0), AxisMatrix.IDENTITY),
                          new TreeMap<>(Map.of("known-turns", day)),
                          new TreeMap<>()));
            }
          }
        });
  }

  /** Given: kept by a program of another sum, with other settings. Expect: written over. */
  @Test
  void whatAnotherProgramOrOtherSettingsMadeIsNotUsed() throws IOException {
    String fresh = progress();
    byte[] own = Files.readAllBytes(place(""));
    for (String claim : List.of("claim\tprogram\t", "aimSdRad=")) {
      String text = new String(own, StandardCharsets.ISO_8859_1);
      int at = text.indexOf(claim) + claim.length();
      byte[] others = own.clone();
      others[at] = (byte) (others[at] == '1' ? '2' : '1');
      Files.write(place(""), others);
      assertThat(progress()).isEqualTo(fresh);
      assertThat(Files.readAllBytes(place(""))).as(claim).isNotEqualTo(others);
      assertThat(head().toString()).doesNotContain("aimSdRad=1");
    }
  }

  private interface Change {
    void make() throws IOException;
  }

  /** Expect: what is said after it differs from before, and is what a new archive would say. */
  private void assertRecomputed(Change change) throws IOException {
    String before = progress();
    change.make();
    String after = progress();
    Files.delete(place(""));
    assertThat(after).isNotEqualTo(before).isEqualTo(progress());
  }

  private static void sameSizeAndTime(Path file, String from, String to) throws IOException {
    FileTime time = Files.getLastModifiedTime(file);
    Files.writeString(file, Files.readString(file).replace(from, to));
    Files.setLastModifiedTime(file, time);
  }

  private String progress() {
    return CommandLineRun.of("progress", "mika", root.toString(), "--format", "json").out();
  }

  private Session session() {
    return Archive.open(root).sessions().get(0);
  }

  private Path place(String kind) {
    return KeptPlace.of(session(), kind);
  }

  private List<String> head() throws IOException {
    String all = new String(Files.readAllBytes(place("")), StandardCharsets.ISO_8859_1);
    return all.substring(0, all.indexOf("\n\n")).lines().toList();
  }

  private static void run(String words, Path out) {
    List<String> all = new ArrayList<>(List.of(words.split(" ")));
    all.add(out.toString());
    CommandLineRun run = CommandLineRun.of(all.toArray(String[]::new));
    assertThat(run.exitCode()).as(run.err()).isZero();
  }
}
