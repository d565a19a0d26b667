package steadyturn.ingest.recording.write;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Iterator;
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
import steadyturn.ingest.sample.UnitFacts;
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
    write(recording, whole(recording), label, zeroAt);
  }

  /**
   * Writes a recording whose samples come in pieces as one run.
   *
   * @param recording all but the samples
   * @return when the last sample was, s on the recording's time axis
   */
  public double write(
      Recording recording, List<UnitPieces> units, RunLabel label, LocalDateTime zeroAt) {
    List<Written> written = new ArrayList<>();
    write(
        recording,
        units,
        written,
        zeroAt,
        () -> {
          if (isTaken(label)) {
            throw RecordingException.of(
                motionFolder(label),
                label.id() + " is already there. Choose another lesson or run number.");
          }
          return label;
        });
    return written.stream().mapToDouble(Written::lastS).max().orElse(0);
  }

  private static List<UnitPieces> whole(Recording recording) {
    return recording.units().stream().filter(u -> u.size() > 0).map(UnitPieces::whole).toList();
  }

  /** Writes a recording as the only run of a lesson, or as its next one; returns which. */
  public RunLabel writeNext(Recording recording, String lesson, LocalDateTime zeroAt) {
    RunLabel only = RunLabel.lesson(recording.player().id(), lesson);
    return write(
        recording,
        whole(recording),
        new ArrayList<>(),
        zeroAt,
        () -> isTaken(only) ? nextRun(only.player(), lesson) : only);
  }

  /** The samples go to the disk first, which takes long; the rest is done by one at a time. */
  private RunLabel write(
      Recording recording,
      List<UnitPieces> units,
      List<Written> written,
      LocalDateTime zeroAt,
      Supplier<RunLabel> choice) {
    Leftovers.sweep(root, WAITING);
    Path waiting = root.resolve(Leftovers.beside(WAITING));
    try {
      for (UnitPieces unit : units) {
        written.add(writeSamples(unit, waiting));
      }
      return ArchiveLock.whileWriting(
          root, () -> put(recording, written, waiting, choice.get(), zeroAt));
    } catch (RecordingException e) { // the file that could not be written is one nobody knows
      throw e.getCause() instanceof IOException cause ? RecordingException.io(root, cause) : e;
    } finally {
      Leftovers.delete(waiting);
    }
  }

  private RunLabel put(
      Recording recording,
      List<Written> units,
      Path waiting,
      RunLabel label,
      LocalDateTime zeroAt) {
    if (!recording.player().id().equals(label.player())) {
      throw new IllegalArgumentException(
          "a recording of " + recording.player().id() + " under the name of " + label.player());
    }
    Path folder = motionFolder(label);
    Participants.add(root, recording.player());
    for (Written unit : units) {
      UnitSidecars.write(folder, label, unit.facts, unit.rateHz());
    }
    writeMarks(recording, units, label, folder);
    for (Written unit : units) {
      WholeFile.move(unit.samplesIn(waiting), table(label, unit));
    }
    for (Written unit : units) {
      StartTimes.add(root, label, table(label, unit), startOf(unit, zeroAt));
    }
    return label;
  }

  private Path motionFolder(RunLabel label) {
    return root.resolve(label.folder()).resolve("motion");
  }

  private Path table(RunLabel label, Written unit) {
    return motionFolder(label).resolve(label.fileName(unit.tracksys(), "motion.tsv"));
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
      Recording recording, List<Written> units, RunLabel label, Path folder) {
    if (!recording.marks().isEmpty() && !units.isEmpty()) {
      EventsFile.write(folder, label, units.get(0).tracksys(), recording.marks());
    }
  }

  private static LocalDateTime startOf(Written unit, LocalDateTime zeroAt) {
    long micros = Math.round(unit.firstS * 1e6);
    return zeroAt.plusNanos(1000 * micros);
  }

  /** What the rest of the archive is told of a table of samples. */
  private record Written(UnitFacts facts, double firstS, double lastS, long samples) {

    OptionalDouble rateHz() {
      double lengthS = lastS - firstS;
      return lengthS > 0 ? OptionalDouble.of((samples - 1) / lengthS) : OptionalDouble.empty();
    }

    String tracksys() {
      return facts.point().tracksysLabel();
    }

    Path samplesIn(Path waiting) {
      return waiting.resolve(tracksys());
    }

    Written and(UnitStream piece) {
      double first = samples == 0 ? piece.timeS(0) : firstS;
      return new Written(facts, first, piece.timeS(piece.size() - 1), samples + piece.size());
    }
  }

  private static Written writeSamples(UnitPieces unit, Path waiting) {
    Written[] written = {new Written(unit.facts(), 0, 0, 0)};
    WholeFile.write(
        written[0].samplesIn(waiting),
        out -> {
          Iterator<UnitStream> pieces = unit.pieces().get();
          while (pieces.hasNext()) {
            UnitStream piece = pieces.next();
            written[0] = written[0].and(piece);
            writeSamples(piece, written[0].firstS, out);
          }
        });
    return written[0];
  }

  private static void writeSamples(UnitStream unit, double zeroS, OutputStream out)
      throws IOException {
    SampleLines lines = new SampleLines(out);
    double[] accelMps2 = new double[3];
    double[] gyroRadPerS = new double[3];
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
