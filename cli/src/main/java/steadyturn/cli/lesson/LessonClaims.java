package steadyturn.cli.lesson;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32C;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.ingest.kept.LessonFiles;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.table.RecordingException;

/**
 * What a lesson's results rest on besides its files: program, settings, the player's sizes and
 * side, the calibration of each unit. Looked up once for a command, before anything is read.
 */
final class LessonClaims {

  private static final String CALIBRATION = "calibration\t";

  private final AnalysisSettings settings;
  private final Map<Path, Map<Path, Long>> calibrations = new HashMap<>();
  private final Map<List<Object>, String> players = new HashMap<>();

  LessonClaims(AnalysisSettings settings) {
    this.settings = settings;
  }

  /** Looks up what may change while a lesson is read. */
  void look(Session lesson) {
    Path root = LessonFiles.root(lesson);
    calibrations.computeIfAbsent(root, LessonClaims::sums);
    player(root, lesson.player());
  }

  /** The claims of results made with the calibrations of these units. */
  List<String> of(Session lesson, Collection<String> serials) {
    Path root = LessonFiles.root(lesson);
    List<String> claims = new ArrayList<>();
    claims.add("program\t" + ProgramSum.ofThisRun());
    claims.add("settings\t" + settings);
    claims.add("player\t" + player(root, lesson.player()));
    serials.forEach(serial -> claims.add(CALIBRATION + clean(serial) + "\t" + its(root, serial)));
    return claims;
  }

  /** Whether claims made once hold now. */
  boolean hold(Session lesson, List<String> claims) {
    List<String> serials =
        claims.stream()
            .filter(claim -> claim.startsWith(CALIBRATION))
            .map(claim -> claim.split("\t", -1)[1])
            .toList();
    return claims.equals(of(lesson, serials));
  }

  /** A serial number with a break in it is another one; then nothing holds, and all is reckoned. */
  private static String clean(String serial) {
    return serial.replaceAll("[\\t\\r\\n]", "?");
  }

  private String its(Path root, String serial) {
    Map<Path, Long> sums = calibrations.computeIfAbsent(root, LessonClaims::sums);
    return CalibrationStore.latest(serial, List.copyOf(sums.keySet()))
        .map(file -> file.getFileName() + "\t" + sums.get(file))
        .orElse("none");
  }

  private static Map<Path, Long> sums(Path root) {
    Map<Path, Long> sums = new HashMap<>();
    for (Path file : CalibrationStore.of(root).files()) {
      CRC32C sum = new CRC32C();
      try {
        sum.update(Files.readAllBytes(file));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      sums.put(file, sum.getValue());
    }
    return sums;
  }

  private String player(Path root, String label) {
    return players.computeIfAbsent(List.of(root, label), key -> told(root, label));
  }

  private static String told(Path root, String label) {
    List<String> notices = new ArrayList<>();
    try {
      String player = Participants.player(root, label, notices).toString();
      return (player + notices).replace('\n', ' ');
    } catch (RecordingException e) {
      return "unknown"; // reading the lesson says why
    }
  }
}
