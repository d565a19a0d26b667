package steadyturn.cli.command.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.lesson.MappedUnits;
import steadyturn.cli.output.tsv.OrientationFiles;
import steadyturn.cli.output.tsv.OrientationText;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** Finds the orientation of units in any recording, for other programs to use. */
@Command(name = "orient", sortOptions = false)
public final class OrientCommand implements Callable<Integer> {

  enum Format {
    CSV,
    STO
  }

  enum Rest {
    LAID_DOWN,
    WORN;

    RestDetectorSettings settings() {
      return this == WORN ? RestDetectorSettings.worn() : RestDetectorSettings.laidDown();
    }

    @Override
    public String toString() {
      return this == WORN ? "worn" : "laid-down";
    }
  }

  @Mixin private Console console;

  @Parameters(arity = "1..*", paramLabel = "PATH")
  private List<Path> paths = List.of();

  @Option(names = "--map", paramLabel = "MAP")
  private Optional<String> map = Optional.empty();

  @Option(names = "--point", paramLabel = "POINT")
  private Optional<String> point = Optional.empty();

  @Option(names = "--method", paramLabel = "METHOD")
  private String method = OrientationMethod.OFFLINE.word();

  @Option(names = "--rest", paramLabel = "laid-down|worn")
  private Optional<Rest> rest = Optional.empty();

  @Option(names = "--format", paramLabel = "csv|sto")
  private Format format = Format.CSV;

  @Option(names = "--sigma")
  private boolean sigma;

  @Option(names = "--out", paramLabel = "PATH")
  private Optional<Path> out = Optional.empty();

  @Override
  public Integer call() throws IOException {
    OrientationMethod chosen =
        OrientationMethod.ofWord(method)
            .orElseThrow(() -> console.wrongUsage("there is no method \"" + method + "\""));
    return map.isPresent() ? table(chosen) : archives(chosen);
  }

  private OrientationTrack orient(UnitStream unit, OrientationMethod chosen, Rest usual) {
    KalmanSettings settings = KalmanSettings.with(rest.orElse(usual).settings());
    return new OrientationRun(settings).run(unit, chosen);
  }

  private int table(OrientationMethod chosen) throws IOException {
    if (paths.size() != 1) {
      throw console.wrongUsage("--map reads one table, " + paths.size() + " were named");
    }
    List<UnitStream> units = MappedUnits.read(paths.get(0), map.orElseThrow(), point, console);
    if (format == Format.CSV && units.size() != 1) {
      throw console.wrongUsage(
          "the table holds several units (%s): choose one with --point, or --format sto for all",
          units.stream().map(u -> u.point().trackedPoint()).collect(Collectors.joining(", ")));
    }
    Map<BodyPoint, OrientationTrack> tracks = new EnumMap<>(BodyPoint.class);
    units.forEach(unit -> tracks.put(unit.point(), orient(unit, chosen, Rest.LAID_DOWN)));
    if (out.isEmpty()) {
      write(tracks, console.out());
      return Failures.DONE;
    }
    WholeFile.writeText(out.get(), to -> write(tracks, to));
    return Failures.DONE;
  }

  private void write(Map<BodyPoint, OrientationTrack> tracks, Appendable to) throws IOException {
    if (format == Format.STO) {
      OrientationText.writeSto(tracks, to);
    } else {
      OrientationText.writeCsv(tracks.values().iterator().next(), sigma, to);
    }
  }

  private int archives(OrientationMethod chosen) {
    Lessons lessons = Lessons.under(paths, console);
    lessons.each(
        lesson -> {
          for (SessionRun run : lesson.runs()) {
            lessons.tried(() -> orientRun(run, chosen));
          }
        });
    return lessons.allWell() ? Failures.DONE : Failures.FAILED;
  }

  private void orientRun(SessionRun run, OrientationMethod chosen) {
    CalibrationStore calibrations = CalibrationStore.of(run.root());
    OrientationFiles files = OrientationFiles.into(out.orElse(run.root()));
    Map<BodyPoint, OrientationTrack> tracks = new EnumMap<>(BodyPoint.class);
    List<OrientationFiles.Written> written = new ArrayList<>();
    for (UnitStream raw : RecordingReader.readUnits(run)) {
      if (point.isPresent() && !raw.point().trackedPoint().equals(point.get())) {
        continue;
      }
      UnitStream unit = calibrations.applyTo(raw);
      OrientationTrack track = orient(unit, chosen, Rest.WORN);
      tracks.put(unit.point(), track);
      if (format == Format.CSV) {
        double rateHz = unit.facts().nominalRateHz();
        written.add(files.write(run.id(), unit.point(), rateHz, chosen, track));
      }
    }
    if (format == Format.STO && !tracks.isEmpty()) {
      written.add(files.writeSto(run.id(), tracks));
    }
    for (OrientationFiles.Written each : written) {
      console.out().println(each.table());
      if (each.replaced()) {
        console.warn(Words.say("orient.replaced", each.table().getFileName()));
      }
    }
  }
}
