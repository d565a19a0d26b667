package steadyturn.cli.command.live;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;

/**
 * One unit of the command line: {@code [POINT=]PATH[,ADAPTER]}.
 *
 * @param point where it is worn; empty when its hello tells
 * @param path of its port
 * @param adapter the name of its adapter; empty to find out
 */
public record UnitChoice(Optional<BodyPoint> point, String path, Optional<String> adapter) {

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
      if (!seen.add(unit.path())) {
        throw console.wrongUsage("port " + unit.path() + " is named twice");
      }
    }
  }

  /** Reads the words of the command line. */
  public static final class Converter implements ITypeConverter<UnitChoice> {
    @Override
    public UnitChoice convert(String word) {
      int equals = word.indexOf('=');
      int comma = word.indexOf(',', equals + 1);
      String path = word.substring(equals + 1, comma < 0 ? word.length() : comma);
      if (path.isEmpty()) {
        throw new TypeConversionException("\"" + word + "\" names no port");
      }
      return new UnitChoice(
          equals < 0 ? Optional.empty() : Optional.of(point(word.substring(0, equals))),
          path,
          comma < 0 ? Optional.empty() : Optional.of(adapter(word.substring(comma + 1))));
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
                      "there is no adapter \"" + name + "\"; there are " + adapters()));
    }

    private static String adapters() {
      return SensorAdapters.all().stream()
          .map(SensorAdapter::name)
          .collect(Collectors.joining(", "));
    }
  }
}
