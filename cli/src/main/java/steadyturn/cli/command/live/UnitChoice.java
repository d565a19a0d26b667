package steadyturn.cli.command.live;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sensor.AdapterPlugins;
import steadyturn.ingest.sensor.FindingAdapter;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;
import steadyturn.ingest.sensor.UnitOptions;

/**
 * One unit of the command line: {@code [POINT=]PATH[#NUMBER][,ADAPTER[:OPTIONS]]}.
 *
 * @param point where it is worn; empty when its hello tells
 * @param path of its port
 * @param number which of several units at the port; 0 for the only one
 * @param adapter the name of its adapter; empty to find out
 * @param options of the adapter, such as {@code rate=200}
 */
public record UnitChoice(
    Optional<BodyPoint> point, String path, int number, Optional<String> adapter, String options) {

  private static final Pattern NUMBERED = Pattern.compile("(.+)#([1-9][0-9]?)");

  /** Its adapter, told what is wished; one that finds out where none was named. */
  public SensorAdapter newAdapter() {
    SensorAdapter made = adapter.flatMap(SensorAdapters::named).orElseGet(FindingAdapter::new);
    UnitOptions wishes = UnitOptions.of(options, number);
    made.choose(wishes);
    adapter.ifPresent(wishes::requireAllAsked);
    return made;
  }

  /** The word of the command line that names it. */
  public String word() {
    String where = point.map(at -> at.trackedPoint() + "=").orElse("") + place();
    String how = adapter.map(name -> "," + name).orElse("");
    return where + how + (options.isEmpty() ? "" : ":" + options);
  }

  /** Its port as people name it. */
  public String place() {
    return number == 0 ? path : path + "#" + number;
  }

  /** Refuses two units at one body point, and one port for two units. */
  static void requireApart(List<UnitChoice> units, Console console) {
    Set<Object> seen = new HashSet<>();
    for (UnitChoice unit : units) {
      unit.point()
          .filter(point -> !seen.add(point))
          .ifPresent(
              point -> {
                throw console.wrongUsage("two units are to be worn at " + point.trackedPoint());
              });
      if (!seen.add(unit.place())) {
        throw console.wrongUsage("port " + unit.place() + " is named twice");
      }
    }
  }

  /** Reads the words of the command line. */
  public static final class Converter implements ITypeConverter<UnitChoice> {
    @Override
    public UnitChoice convert(String word) {
      return of(word);
    }
  }

  /** Reads one word of the command line. */
  public static UnitChoice of(String word) {
    int equals = word.indexOf('=');
    int comma = word.indexOf(',');
    equals = comma >= 0 && equals > comma ? -1 : equals; // that of an option
    String port = word.substring(equals + 1, comma < 0 ? word.length() : comma);
    Matcher numbered = NUMBERED.matcher(port);
    boolean isNumbered = numbered.matches();
    if (port.isEmpty()) {
      throw new TypeConversionException("\"" + word + "\" names no port");
    }
    String rest = comma < 0 ? "" : word.substring(comma + 1);
    int colon = rest.indexOf(':');
    return checked(
        new UnitChoice(
            equals < 0 ? Optional.empty() : Optional.of(point(word.substring(0, equals))),
            isNumbered ? numbered.group(1) : port,
            isNumbered ? Integer.parseInt(numbered.group(2)) : 0,
            comma < 0
                ? Optional.empty()
                : Optional.of(adapter(colon < 0 ? rest : rest.substring(0, colon))),
            colon < 0 ? "" : rest.substring(colon + 1)));
  }

  private static UnitChoice checked(UnitChoice choice) {
    try {
      choice.newAdapter();
      return choice;
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(String.valueOf(e.getMessage()));
    }
  }

  private static BodyPoint point(String word) {
    return BodyPoint.ofTrackedPoint(word.replace('-', '_'))
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "\"" + word + "\" is no body point; there are " + BodyPoint.words()));
  }

  private static String adapter(String name) {
    return SensorAdapters.named(name)
        .map(SensorAdapter::name)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    Words.say(
                        "plugins.no-adapter",
                        name,
                        adapters(),
                        AdapterPlugins.loadedFrom().map(Path::toString).orElse("-"))));
  }

  private static String adapters() {
    return SensorAdapters.all().stream().map(SensorAdapter::name).collect(Collectors.joining(", "));
  }
}
