package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.lesson.PlayerSizes;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.columnmap.ColumnMap;
import steadyturn.ingest.columnmap.ColumnMapImporter;
import steadyturn.ingest.columnmap.Imported;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Brings tables of other programs into the archive by a column map. */
@Command(name = "import", sortOptions = false)
public final class ImportCommand implements Callable<Integer> {

  /** Where the day of a recording is not told: a date that nobody takes for a real one. */
  private static final LocalDateTime UNKNOWN_DAY = LocalDateTime.of(1900, 1, 1, 0, 0);

  @Mixin private Console console;

  @Parameters(arity = "1..*", paramLabel = "[POINT=]TABLE")
  private List<String> tables = List.of();

  @Option(names = "--map", required = true, paramLabel = "MAP")
  private String map = "";

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out = Path.of("");

  @Option(names = "--player", required = true, paramLabel = "LABEL")
  private String player = "";

  @Option(names = "--lesson", paramLabel = "LABEL")
  private String lesson = "01";

  @Option(names = "--handed", paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Mixin private PlayerSizes sizes;

  @Option(names = "--start", paramLabel = "TIME")
  private LocalDateTime start = UNKNOWN_DAY;

  @Override
  public Integer call() {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    boolean isFile = map.endsWith(".toml") || map.endsWith(".json");
    ColumnMap columns = isFile ? ColumnMap.read(Path.of(map)) : ColumnMap.bundled(map);
    List<UnitStream> units = new ArrayList<>();
    for (String table : tables) {
      units.addAll(unitsOf(table, columns));
    }
    Recording recording =
        ColumnMapImporter.recording(player, sizes.of(player, handed, console), units, List.of());
    RunLabel label =
        RecordingWriter.into(out, "Imported recordings").writeNext(recording, lesson, start);
    for (UnitStream unit : recording.units()) {
      if (unit.size() == 0) {
        console.warn(unit.point().trackedPoint() + " has no samples and was left out");
      } else {
        console.out().println(label.id() + ": " + words(unit));
      }
    }
    console.out().println("Next: ./steadyturn check " + out);
    return Failures.DONE;
  }

  private List<UnitStream> unitsOf(String table, ColumnMap columns) {
    int equals = table.indexOf('=');
    Optional<BodyPoint> point =
        equals < 0 ? Optional.empty() : BodyPoint.ofTrackedPoint(table.substring(0, equals));
    Path file = Path.of(point.isPresent() ? table.substring(equals + 1) : table);
    Imported imported =
        ColumnMapImporter.read(file, point.isPresent() ? columns.at(point.get()) : columns);
    imported.notices().forEach(console::warn);
    return imported.units();
  }

  private static String words(UnitStream unit) {
    return String.format(
        Locale.ROOT,
        "%s, %d samples, %.1f s at %.2f Hz",
        unit.point().trackedPoint().replace('_', ' '),
        unit.size(),
        unit.lengthS(),
        unit.facts().nominalRateHz());
  }
}
