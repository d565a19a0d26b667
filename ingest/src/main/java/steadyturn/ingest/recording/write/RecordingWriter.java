package steadyturn.ingest.recording.write;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.MotionName;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.StartTimes;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Writes recordings into an archive, which grows run by run; what is there is never changed. Every
 * file is there whole or not at all, the motion tables come last but for their start times, and one
 * writer at a time chooses its run and puts it into the archive.
 */
public final class RecordingWriter {

  private static final String KEPT = ".steadyturn-kept-";
  private static final String WAITING = ".steadyturn-waiting.";

  private final Path root;

  private RecordingWriter(Path root) {
    this.root = root;
  }

  /** A writer into a dataset folder, which is made when it is not there yet. */
  public static RecordingWriter into(Path root, String datasetName) {
    return ArchiveLock.whileWriting(
        root,
        () -> {
          DatasetFiles.ensure(root, datasetName);
          return new RecordingWriter(root);
        });
  }

  /** The first free run of a lesson. */
  private RunLabel nextRun(String player, String lesson) {
    int run = 1;
    while (isTaken(RunLabel.run(player, lesson, run))) {
      run++;
    }
    return RunLabel.run(player, lesson, run);
  }

  /**
   * Keeps the first free run of a lesson for the one who records into the archive, table by table;
   * nobody else gets it until {@link #giveBack}.
   */
  public RunLabel keepNextRun(Player player, String lesson) {
    return ArchiveLock.whileWriting(
        root,
        () -> {
          Leftovers.like(root, KEPT).forEach(Leftovers::delete); // of recorders that were killed
          RunLabel label = nextRun(player.id(), lesson);
          Participants.add(root, player);
          WholeFile.write(keptFile(label), "");
          return label;
        });
  }

  /** Ends the keeping of a run; what was written of it stays. */
  public void giveBack(RunLabel label) {
    try {
      Files.deleteIfExists(keptFile(label));
    } catch (IOException e) {
      throw RecordingException.io(keptFile(label), e);
    }
  }

  private Path keptFile(RunLabel label) {
    return root.resolve(KEPT + label.id());
  }

  /**
   * Writes a recording as one run.
   *
   * @param zeroAt the time of day at the zero of the recording's time axis
   * @throws RecordingException when that run is there already
   */
  public void write(Recording recording, RunLabel label, LocalDateTime zeroAt) {
    write(
        recording,
        zeroAt,
        () -> {
          if (isTaken(label)) {
            throw RecordingException.of(
                motionFolder(label),
                label.id() + " is already there. Choose another lesson or run number.");
          }
          return label;
        });
  }

  /** Writes a recording as the only run of a lesson, or as its next one; returns which. */
  public RunLabel writeNext(Recording recording, String lesson, LocalDateTime zeroAt) {
    RunLabel only = RunLabel.lesson(recording.player().id(), lesson);
    return write(recording, zeroAt, () -> isTaken(only) ? nextRun(only.player(), lesson) : only);
  }

  /** The samples go to the disk first, which takes long; the rest is done by one at a time. */
  private RunLabel write(Recording recording, LocalDateTime zeroAt, Supplier<RunLabel> choice) {
    List<UnitStream> units = recording.units().stream().filter(u -> u.size() > 0).toList();
    Leftovers.sweep(root, WAITING);
    Path waiting = root.resolve(Leftovers.beside(WAITING));
    try {
      for (UnitStream unit : units) {
        writeSamples(unit, waiting.resolve(unit.point().tracksysLabel()));
      }
      return ArchiveLock.whileWriting(
          root, () -> put(recording, units, waiting, choice.get(), zeroAt));
    } catch (RecordingException e) { // the file that could not be written is one nobody knows
      throw e.getCause() instanceof IOException cause ? RecordingException.io(root, cause) : e;
    } finally {
      Leftovers.delete(waiting);
    }
  }

  private RunLabel put(
      Recording recording,
      List<UnitStream> units,
      Path waiting,
      RunLabel label,
      LocalDateTime zeroAt) {
    if (!recording.player().id().equals(label.player())) {
      throw new IllegalArgumentException(
          "a recording of " + recording.player().id() + " under the name of " + label.player());
    }
    Path folder = motionFolder(label);
    Participants.add(root, recording.player());
    for (UnitStream unit : units) {
      UnitSidecars.write(folder, label, unit.facts(), effectiveRateHz(unit));
    }
    writeMarks(recording, units, label, folder);
    for (UnitStream unit : units) {
      WholeFile.move(waiting.resolve(unit.point().tracksysLabel()), table(label, unit));
    }
    for (UnitStream unit : units) {
      StartTimes.add(root, label, table(label, unit), startOf(unit, zeroAt));
    }
    return label;
  }

  private Path motionFolder(RunLabel label) {
    return root.resolve(label.folder()).resolve("motion");
  }

  private Path table(RunLabel label, UnitStream unit) {
    return motionFolder(label).resolve(label.fileName(unit.point().tracksysLabel(), "motion.tsv"));
  }

  /** Whether any motion table of that run is there, or someone keeps it. */
  private boolean isTaken(RunLabel label) {
    Path folder = motionFolder(label);
    if (Files.exists(keptFile(label))) {
      return true;
    }
    if (!Files.isDirectory(folder)) {
      return false;
    }
    return Leftovers.like(folder, "").stream()
        .flatMap(f -> MotionName.of(f).stream())
        .anyMatch(n -> n.isMotionTable() && n.runId().equals(label.id()));
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
    double lengthS = unit.lengthS();
    return lengthS > 0 ? OptionalDouble.of((unit.size() - 1) / lengthS) : OptionalDouble.empty();
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
