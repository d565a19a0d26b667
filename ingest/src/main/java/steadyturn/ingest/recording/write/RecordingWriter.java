package steadyturn.ingest.recording.write;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.MotionName;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.StartTimes;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.WholeFile;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Writes recordings into an archive, which grows run by run; what is there is never changed. Every
 * file is there whole or not at all, and the motion tables come last but for their start times.
 */
public final class RecordingWriter {

  private final Path root;

  private RecordingWriter(Path root) {
    this.root = root;
  }

  /** A writer into a dataset folder, which is made when it is not there yet. */
  public static RecordingWriter into(Path root, String datasetName) {
    DatasetFiles.ensure(root, datasetName);
    return new RecordingWriter(root);
  }

  /** The first free run of a lesson. */
  public RunLabel nextRun(String player, String lesson) {
    int run = 1;
    while (isTaken(RunLabel.run(player, lesson, run))) {
      run++;
    }
    return RunLabel.run(player, lesson, run);
  }

  /**
   * Writes a recording as one run.
   *
   * @param zeroAt the time of day at the zero of the recording's time axis
   * @return the motion folder
   */
  public Path write(Recording recording, RunLabel label, LocalDateTime zeroAt) {
    if (!recording.player().id().equals(label.player())) {
      throw new IllegalArgumentException(
          "a recording of " + recording.player().id() + " under the name of " + label.player());
    }
    Path folder = motionFolder(label);
    if (isTaken(label)) {
      throw RecordingException.of(
          folder, label.id() + " is already there. Choose another lesson or run number.");
    }
    Participants.add(root, recording.player());
    List<UnitStream> units = recording.units().stream().filter(u -> u.size() > 0).toList();
    for (UnitStream unit : units) {
      UnitSidecars.write(folder, label, unit.facts(), effectiveRateHz(unit));
    }
    writeMarks(recording, units, label, folder);
    for (UnitStream unit : units) {
      writeSamples(unit, table(label, unit));
    }
    for (UnitStream unit : units) {
      StartTimes.add(root, label, table(label, unit), startOf(unit, zeroAt));
    }
    return folder;
  }

  private Path motionFolder(RunLabel label) {
    return root.resolve(label.folder()).resolve("motion");
  }

  private Path table(RunLabel label, UnitStream unit) {
    return motionFolder(label).resolve(label.fileName(unit.point().tracksysLabel(), "motion.tsv"));
  }

  /** Whether any motion table of that run is there. */
  public boolean isTaken(RunLabel label) {
    Path folder = motionFolder(label);
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .flatMap(f -> MotionName.parse(String.valueOf(f.getFileName())).stream())
          .anyMatch(n -> n.isMotionTable() && n.runId().equals(label.id()));
    } catch (IOException e) {
      throw RecordingException.io(folder, e);
    }
  }

  private static void writeMarks(
      Recording recording, List<UnitStream> units, RunLabel label, Path folder) {
    if (!recording.marks().isEmpty() && !units.isEmpty()) {
      EventsFile.write(folder, label, units.get(0).point().tracksysLabel(), recording.marks());
    }
  }

  private static LocalDateTime startOf(UnitStream unit, LocalDateTime zeroAt) {
    long micros = Math.round(unit.timeS(0) * 1e6);
    return zeroAt.plusNanos(1000 * micros);
  }

  private static OptionalDouble effectiveRateHz(UnitStream unit) {
    int n = unit.size();
    return n < 2
        ? OptionalDouble.empty()
        : OptionalDouble.of((n - 1) / (unit.timeS(n - 1) - unit.timeS(0)));
  }

  private static void writeSamples(UnitStream unit, Path table) {
    WholeFile.write(table, out -> writeSamples(unit, out));
  }

  private static void writeSamples(UnitStream unit, OutputStream out) throws IOException {
    SampleLines lines = new SampleLines(out);
    double[] accelMps2 = new double[3];
    double[] gyroRadPerS = new double[3];
    double zeroS = unit.timeS(0);
    for (int i = 0; i < unit.size(); i++) {
      for (int axis = 0; axis < 3; axis++) {
        accelMps2[axis] = unit.accelMps2(axis, i);
        gyroRadPerS[axis] = unit.gyroRadPerS(axis, i);
      }
      lines.write(unit.timeS(i) - zeroS, accelMps2, gyroRadPerS);
    }
    lines.flush();
  }
}
