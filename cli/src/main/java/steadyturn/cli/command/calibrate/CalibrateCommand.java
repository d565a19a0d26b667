package steadyturn.cli.command.calibrate;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.MappedUnits;
import steadyturn.cli.output.table.CalibrationReport;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.fusion.calibrate.CalibrationEffect;
import steadyturn.fusion.calibrate.CalibrationException;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.calibrate.Gravity;
import steadyturn.fusion.calibrate.GuidedStep;
import steadyturn.fusion.calibrate.TableWork;
import steadyturn.fusion.calibrate.UnitCalibration;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/** Finds the errors of units and keeps them by serial number. */
@Command(name = "calibrate", sortOptions = false)
public final class CalibrateCommand implements Callable<Integer> {

  @Mixin private Console console;

  @SuppressWarnings("UnusedVariable") // for the help and the completion
  @Mixin
  private PluginChoice plugins;

  @Mixin private LiveCalibration live;

  @Parameters(paramLabel = "PATH")
  private Path path = Path.of("");

  @Option(names = "--steps", split = ",", paramLabel = "STEP")
  private List<CalibrationStep> steps = List.of();

  @Option(names = "--map", paramLabel = "MAP")
  private Optional<String> map = Optional.empty();

  @Option(names = "--point", paramLabel = "POINT")
  private Optional<String> point = Optional.empty();

  @Option(names = "--serial", paramLabel = "NUMBER")
  private Optional<String> serial = Optional.empty();

  @Option(names = "--latitude", paramLabel = "DEG")
  private Optional<Double> latitudeDeg = Optional.empty();

  @Option(names = "--minutes", paramLabel = "N")
  private double noiseMinutes = 60;

  @Option(names = "--height", paramLabel = "M")
  private double heightM;

  @Option(names = "--into", paramLabel = "ARCHIVE")
  private Optional<Path> into = Optional.empty();

  @Override
  public Integer call() throws IOException {
    if (latitudeDeg.isPresent() && !(Math.abs(latitudeDeg.get()) <= 90)) {
      throw console.wrongUsage("--latitude is -90 to 90 deg, was " + latitudeDeg.get());
    }
    if (live.isAsked()) {
      return liveUnit();
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

  private int liveUnit() throws IOException {
    if (path.toString().isEmpty() || map.isPresent() || !(noiseMinutes > 0)) {
      throw console.wrongUsage("--live needs PATH, the archive; no --map, --minutes above 0");
    }
    List<GuidedStep> guides = new ArrayList<>();
    for (CalibrationStep step : inOrder()) {
      guides.add(step.guide(gravityMps2(), 60 * noiseMinutes));
    }
    SessionRun run = live.run(guides, path, serial, console);
    List<Mark> marks = RecordingReader.readMarks(run);
    CalibrationStore store = CalibrationStore.of(into.orElse(path));
    for (UnitStream unit : RecordingReader.readUnits(run)) {
      calibrate(unit, marks, store);
    }
    console.out().println("  recorded in " + run.root() + ", " + run.id());
    return Failures.DONE;
  }

  private Set<CalibrationStep> inOrder() {
    if (!steps.isEmpty()) {
      return EnumSet.copyOf(steps);
    }
    return live.isAsked()
        ? EnumSet.of(CalibrationStep.REST, CalibrationStep.TURNS, CalibrationStep.POSITIONS)
        : EnumSet.of(CalibrationStep.REST);
  }

  private double gravityMps2() {
    return latitudeDeg.map(deg -> Gravity.atMps2(deg, heightM)).orElse(StandardGravity.MPS2);
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
    double gravityMps2 = gravityMps2();
    CalibrationReport report = new CalibrationReport(console.out());
    report.unit(unit.point().trackedPoint(), number, gravityMps2, latitudeDeg.isPresent());
    LocalDate today = LocalDate.now(ZoneId.systemDefault());
    UnitCalibration found = store.latest(number).orElse(UnitCalibration.none(number, today));
    boolean isAgain = store.latest(number).filter(c -> c.date().equals(today)).isPresent();
    TableWork work = new TableWork(unit, marks);
    for (CalibrationStep step : inOrder()) {
      found = step.take(work, found, gravityMps2, today, report);
    }
    UnitStream named = unit.withFacts(unit.facts().withSerialNumber(number));
    CalibrationEffect.of(found, named).ifPresent(report::effect);
    console
        .out()
        .println(Words.say(isAgain ? "calibrate.kept.again" : "calibrate.kept", store.save(found)));
  }
}
