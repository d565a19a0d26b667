package steadyturn.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.report.CalibrationReport;
import steadyturn.fusion.calibrate.CalibrationEffect;
import steadyturn.fusion.calibrate.CalibrationException;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.Gravity;
import steadyturn.fusion.calibrate.KnownTurns;
import steadyturn.fusion.calibrate.NoiseFigures;
import steadyturn.fusion.calibrate.SixPositions;
import steadyturn.fusion.calibrate.TableRest;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.Session;
import steadyturn.ingest.recording.SessionRun;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/** Finds the errors of units and keeps them by serial number. */
@Command(
    name = "calibrate",
    description = {
      "Finds the errors of units from a recording of them being handled on a table, and keeps",
      "them in the archive by serial number; from then on they are taken off by themselves.",
      "",
      "rest       lay the unit down for 5 s or more",
      "turns      on the table against a square block: turn it by quarters, halves or wholes about",
      "           each of its axes, a second of rest before and after each turn",
      "positions  lay it on each of its six faces on a level table, 2 s each, in any order",
      "noise      lay it down for an hour: random walk and bias instability"
    },
    footer = {"", "A later calibration of the same unit goes on from the one before."},
    sortOptions = false)
final class CalibrateCommand implements Callable<Integer> {

  /** In the order in which they must be done. */
  enum Step {
    REST,
    NOISE,
    TURNS,
    POSITIONS;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Mixin private Console console;

  @Parameters(
      paramLabel = "PATH",
      description = "A recording of an archive; with --map one table of another program.")
  private Path path = Path.of("");

  @Option(
      names = "--steps",
      split = ",",
      paramLabel = "STEP",
      description = "What was done: ${COMPLETION-CANDIDATES}, several with commas. Default: rest.")
  private List<Step> steps = List.of(Step.REST);

  @Option(names = "--map", paramLabel = "MAP", description = "The table's column map.")
  private Optional<String> map = Optional.empty();

  @Option(names = "--point", paramLabel = "POINT", description = "Only the unit worn there.")
  private Optional<String> point = Optional.empty();

  @Option(
      names = "--serial",
      paramLabel = "NUMBER",
      description = "The unit's serial number, where the recording does not tell.")
  private Optional<String> serial = Optional.empty();

  @Option(
      names = "--latitude",
      paramLabel = "DEG",
      description = "Where the table stands, for gravity. Default: 9.80665 m/s^2.")
  private Optional<Double> latitudeDeg = Optional.empty();

  @Option(names = "--height", paramLabel = "M", description = "Height above sea. Default: 0.")
  private double heightM;

  @Option(
      names = "--into",
      paramLabel = "ARCHIVE",
      description = "The archive that keeps it. Default: the recording's own.")
  private Optional<Path> into = Optional.empty();

  @Override
  public Integer call() throws IOException {
    if (latitudeDeg.isPresent() && !(Math.abs(latitudeDeg.get()) <= 90)) {
      throw console.wrongUsage("--latitude is -90 to 90 deg, was " + latitudeDeg.get());
    }
    if (map.isPresent()) {
      Path archive =
          into.orElseThrow(() -> console.wrongUsage("--map needs --into, the archive to keep it"));
      List<UnitStream> units = MappedUnits.read(path, map.get(), point, console);
      for (UnitStream unit : units) {
        calibrate(unit, List.of(), CalibrationStore.of(archive));
      }
      return Failures.DONE;
    }
    Lessons lessons = Lessons.under(List.of(path), console);
    lessons.each(lesson -> calibrate(lesson, lessons));
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void calibrate(Session lesson, Lessons lessons) {
    for (SessionRun run : lesson.runs()) {
      CalibrationStore store = CalibrationStore.of(into.orElse(run.root()));
      List<Mark> marks = RecordingReader.readMarks(run);
      for (UnitStream unit : RecordingReader.readUnits(run)) {
        if (point.isEmpty() || point.get().equals(unit.point().trackedPoint())) {
          lessons.tried(() -> calibrate(unit, marks, store));
        }
      }
    }
  }

  private void calibrate(UnitStream unit, List<Mark> marks, CalibrationStore store)
      throws IOException {
    String number = serial.orElse(unit.facts().serialNumber());
    if (number.isBlank()) {
      throw new CalibrationException(
          unit.point().trackedPoint() + " states no serial number; give it with --serial");
    }
    if (unit.facts().calibrated()) {
      throw new CalibrationException(
          unit.point().trackedPoint() + " is corrected already; calibrate from raw samples");
    }
    double gravityMps2 =
        latitudeDeg.map(deg -> Gravity.atMps2(deg, heightM)).orElse(Gravity.STANDARD_MPS2);
    CalibrationReport report = new CalibrationReport(console.out());
    report.unit(unit.point().trackedPoint(), number, gravityMps2, latitudeDeg.isPresent());
    LocalDate today = LocalDate.now(ZoneId.systemDefault());
    UnitCalibration found = store.latest(number).orElse(UnitCalibration.none(number, today));
    Set<Step> inOrder = EnumSet.copyOf(steps);
    for (Step step : inOrder) {
      UnitStream asked = step == Step.REST ? tableRest(unit, marks) : unit;
      found = take(step, asked, found, gravityMps2, today, report);
    }
    UnitStream named = serial.isPresent() ? Renamed.to(number, unit) : unit;
    CalibrationEffect.of(found, named).ifPresent(report::effect);
    console.out().println("  kept in " + store.save(found));
  }

  /** The stretch marked as a table rest, the last one; the whole recording where none is marked. */
  private static UnitStream tableRest(UnitStream unit, List<Mark> marks) {
    return marks.stream()
        .filter(mark -> mark.trialType().equals("table-rest"))
        .reduce((first, second) -> second)
        .map(mark -> unit.between(mark.onsetS(), mark.endS()))
        .orElse(unit);
  }

  private static UnitCalibration take(
      Step step,
      UnitStream unit,
      UnitCalibration so,
      double gravityMps2,
      LocalDate today,
      CalibrationReport report) {
    switch (step) {
      case REST -> {
        TableRest rest = TableRest.of(TableRest.longestIn(unit));
        report.rest(rest);
        return so.with(rest, today);
      }
      case NOISE -> {
        return noise(TableRest.longestIn(unit), so, report);
      }
      case TURNS -> {
        KnownTurns turns = KnownTurns.of(unit);
        report.turns(turns);
        return so.with(turns, today);
      }
      case POSITIONS -> {
        SixPositions positions = SixPositions.of(unit, gravityMps2);
        report.positions(positions);
        return so.with(positions, gravityMps2, today);
      }
    }
    throw new IllegalStateException("no step " + step);
  }

  private static UnitCalibration noise(
      UnitStream rest, UnitCalibration so, CalibrationReport report) {
    UnitCalibration found = so;
    double stepS = (rest.timeS(rest.size() - 1) - rest.timeS(0)) / (rest.size() - 1);
    for (int axis = 0; axis < 3; axis++) {
      String name = List.of("x", "y", "z").get(axis);
      NoiseFigures gyro = NoiseFigures.of(withoutLosses(rest.gyroColumnRadPerS(axis)), stepS);
      report.noise(name, gyro);
      found =
          found
              .withFigure(
                  "gyro_" + name + "_random_walk_deg_per_sqrt_h",
                  60 * Math.toDegrees(gyro.whiteNoisePerRootS()))
              .withFigure(
                  "gyro_" + name + "_bias_instability_deg_per_h",
                  3600 * Math.toDegrees(gyro.biasInstability()));
    }
    return found;
  }

  /** A few lost values leave the figures as they are; they are passed over. */
  private static double[] withoutLosses(double[] column) {
    return java.util.Arrays.stream(column).filter(v -> !Double.isNaN(v)).toArray();
  }
}
