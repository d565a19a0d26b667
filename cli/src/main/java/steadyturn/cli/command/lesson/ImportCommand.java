package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.lesson.PlayerSizes;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.columnmap.ColumnMap;
import steadyturn.ingest.columnmap.ColumnMapImporter;
import steadyturn.ingest.columnmap.Imported;
import steadyturn.ingest.columnmap.PhoneFolder;
import steadyturn.ingest.columnmap.PhoneFolder.Signs;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.CapturedBytes;

/** Brings tables of other programs into the archive by a column map. */
@Command(name = "import", sortOptions = false)
public final class ImportCommand implements Callable<Integer> {

  /** Seconds since 1970 from which on a clock that counts them tells the day: those of 2000. */
  private static final double TELLS_DAY_S = 946_684_800;

  @Mixin private Console console;

  @SuppressWarnings("UnusedVariable") // for the help and the completion
  @Mixin
  private PluginChoice plugins;

  @Parameters(arity = "1..*", paramLabel = "[POINT=]TABLE")
  private List<String> tables = List.of();

  @Option(names = "--map", paramLabel = "MAP")
  private String map = "";

  @Option(names = "--unchecked")
  private boolean isUnchecked;

  @Option(names = "--phone", paramLabel = "android|ios")
  private Optional<Signs> phone = Optional.empty();

  @Option(names = "--adapter", paramLabel = "NAME")
  private String adapter = "";

  @Option(names = "--rate", paramLabel = "HZ")
  private Optional<Double> rateHz = Optional.empty();

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out = Path.of("");

  @Option(names = "--player", required = true, paramLabel = "LABEL")
  private String player = "";

  @Option(names = "--lesson", paramLabel = "LABEL")
  private String lesson = "01";

  @Option(names = "--handed", paramLabel = "right|left")
  private Handedness handed = Handedness.RIGHT;

  @Mixin private PlayerSizes sizes;

  @Option(names = "--start", paramLabel = "[POINT=]TIME")
  private List<String> starts = List.of();

  @Option(names = "--one-clock")
  private boolean oneClock;

  @Override
  public Integer call() {
    if (!RunLabel.isLabel(player) || !RunLabel.isLabel(lesson)) {
      throw console.wrongUsage("--player and --lesson take letters and digits only");
    }
    int ways = (map.isEmpty() ? 0 : 1) + (adapter.isEmpty() ? 0 : 1) + (phone.isEmpty() ? 0 : 1);
    if (ways != 1) {
      throw console.wrongUsage("%s", Words.say("import.how"));
    }
    ImportStarts told = new ImportStarts(starts, console);
    List<List<UnitStream>> read = adapter.isEmpty() ? mapped() : captured();
    LocalDateTime begins = told.isTold() ? told.begin() : dayOf(read);
    List<UnitStream> units =
        oneClock ? read.stream().flatMap(List::stream).toList() : told.laid(read);
    Recording recording =
        ColumnMapImporter.recording(player, sizes.of(player, handed, console), units, List.of());
    RunLabel label =
        RecordingWriter.into(out, "Imported recordings").writeNext(recording, lesson, begins);
    for (UnitStream unit : recording.units()) {
      if (unit.size() == 0) {
        console.warn(Words.say("import.empty", unit.point().trackedPoint()));
      } else {
        console.out().println(label.id() + ": " + words(unit));
      }
    }
    console.out().println(Words.say("record.next", out));
    return Failures.DONE;
  }

  private List<List<UnitStream>> mapped() {
    List<List<UnitStream>> units = new ArrayList<>();
    for (String table : tables) {
      int equals = table.indexOf('=');
      Optional<BodyPoint> point =
          equals < 0 ? Optional.empty() : BodyPoint.ofTrackedPoint(table.substring(0, equals));
      Path file = Path.of(point.isPresent() ? table.substring(equals + 1) : table);
      Imported imported = ColumnMapImporter.read(file, columns(file, point), isUnchecked);
      imported.notices().forEach(console::warn);
      units.add(imported.units());
    }
    return units;
  }

  private ColumnMap columns(Path file, Optional<BodyPoint> point) {
    if (phone.isPresent()) {
      return PhoneFolder.map(
          file, phone.get(), point.orElseThrow(() -> console.wrongUsage("%s", worn(file))));
    }
    boolean isFile = map.endsWith(".toml") || map.endsWith(".json");
    ColumnMap columns = isFile ? ColumnMap.read(Path.of(map)) : ColumnMap.bundled(map);
    return point.map(columns::at).orElse(columns);
  }

  private static String worn(Object file) {
    return Words.say("import.worn", file);
  }

  /** Bytes as units sent them: {@code POINT=FILE[#NUMBER]}. */
  private List<List<UnitStream>> captured() {
    OptionalDouble rate = rateHz.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
    List<List<UnitStream>> units = new ArrayList<>();
    for (String table : tables) {
      UnitChoice choice = choice(table);
      BodyPoint point = choice.point().orElseThrow(() -> console.wrongUsage("%s", worn(table)));
      CapturedBytes captured =
          CapturedBytes.read(
              Path.of(choice.path()), choice.newAdapter(), choice.number(), point, rate);
      if (captured.skippedBytes() + captured.lostSamples() > 0) {
        console.warn(
            Words.say("import.captured", table, captured.skippedBytes(), captured.lostSamples()));
      }
      if (captured.unfinishedBytes() > 0) {
        console.warn(Words.say("import.unfinished", table, captured.unfinishedBytes()));
      }
      units.add(List.of(captured.unit()));
    }
    return units;
  }

  private UnitChoice choice(String table) {
    try {
      return UnitChoice.of(table + "," + adapter);
    } catch (TypeConversionException e) {
      throw console.wrongUsage("%s", String.valueOf(e.getMessage()));
    }
  }

  /** The day that the units' own clocks tell, where they tell the time of day. */
  private static LocalDateTime dayOf(List<List<UnitStream>> tables) {
    double firstS =
        tables.stream()
            .flatMap(List::stream)
            .filter(u -> u.size() > 0)
            .mapToDouble(u -> u.timeS(0))
            .min()
            .orElse(0);
    return firstS < TELLS_DAY_S
        ? ImportStarts.UNKNOWN_DAY
        : LocalDateTime.ofEpochSecond((long) firstS, 0, ZoneOffset.UTC);
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
