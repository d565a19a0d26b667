package steadyturn.ingest.columnmap;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.UnitWords;
import steadyturn.ingest.sample.BodyPoint;

/** Turns the text of a column map into a map, with a plain word for every mistake in it. */
final class ColumnMapText {

  private static final List<String> SECTIONS = List.of("table", "time", "unit");
  private static final List<String> TABLE_KEYS =
      List.of("delimiter", "comment", "skip_lines", "header_lines", "decimal", "missing");
  private static final List<String> TIME_KEYS = List.of("column", "unit", "rate_hz", "wraps_at");
  private static final List<String> UNIT_KEYS =
      List.of(
          ("point,serial,accel,accel_unit,accel_full_scale,gyro,gyro_unit,gyro_full_scale,rate_hz")
              .split(",", -1));
  private static final List<String> MISSING_WORDS = List.of("n/a", "NaN", "nan");

  private final Path file;

  private ColumnMapText(Path file) {
    this.file = file;
  }

  static ColumnMap parse(Path file, String text) {
    return new ColumnMapText(file).map(tree(file, text));
  }

  private static JsonNode tree(Path file, String text) {
    try {
      return file.toString().endsWith(".json")
          ? new ObjectMapper().readTree(text)
          : new TomlMapper().readTree(text);
    } catch (JsonProcessingException e) {
      JsonLocation where = e.getLocation();
      throw RecordingException.at(
          file,
          where == null ? 0 : where.getLineNr(),
          "cannot be read as a column map ("
              + e.getOriginalMessage().lines().findFirst().orElse("")
              + "). Mend this line.");
    }
  }

  private ColumnMap map(JsonNode tree) {
    MapKeys top = new MapKeys(file, "", tree, SECTIONS);
    try {
      TableShape table = table(new MapKeys(file, "table", tree.path("table"), TABLE_KEYS));
      TimeColumn time = time(new MapKeys(file, "time", tree.path("time"), TIME_KEYS));
      List<UnitColumns> units = new ArrayList<>();
      for (JsonNode unit : tree.path("unit")) {
        units.add(unit(new MapKeys(file, "unit", unit, UNIT_KEYS)));
      }
      if (units.isEmpty()) {
        throw top.wrong("unit", "is missing. Write one section [[unit]] for each unit");
      }
      if (units.stream().map(UnitColumns::point).distinct().count() < units.size()) {
        throw top.wrong("unit", "two units claim the same body point");
      }
      return new ColumnMap(String.valueOf(file.getFileName()), table, time, units);
    } catch (IllegalArgumentException e) {
      throw RecordingException.of(file, e.getMessage() + ". Mend the map.");
    }
  }

  private static TableShape table(MapKeys keys) {
    return new TableShape(
        delimiter(keys),
        keys.text("comment", ""),
        keys.whole("skip_lines", 0),
        keys.whole("header_lines", 1),
        decimalMark(keys),
        keys.words("missing", MISSING_WORDS));
  }

  private static char delimiter(MapKeys keys) {
    String word = keys.text("delimiter", ",");
    return switch (word) {
      case "comma" -> ',';
      case "semicolon" -> ';';
      case "tab" -> '\t';
      case "space" -> ' ';
      default -> {
        if (word.length() != 1) {
          throw keys.wrong(
              "delimiter", "must be one letter, or comma, semicolon, tab or space, is " + word);
        }
        yield word.charAt(0);
      }
    };
  }

  private static char decimalMark(MapKeys keys) {
    String word = keys.text("decimal", ".");
    return switch (word) {
      case ".", "dot", "point" -> '.';
      case ",", "comma" -> ',';
      default -> throw keys.wrong("decimal", "must be \".\" or \",\", is \"" + word + "\"");
    };
  }

  private static TimeColumn time(MapKeys keys) {
    OptionalDouble rateHz = keys.positive("rate_hz");
    if (!keys.has("column")) {
      double stepS =
          1
              / rateHz.orElseThrow(
                  () -> keys.wrong("column", "is missing, and so is rate_hz. Give one of the two"));
      return new TimeColumn(Optional.empty(), stepS, OptionalDouble.empty());
    }
    String unit = keys.needed("unit");
    double secondsPerUnit =
        unit.equals("sample")
            ? 1
                / rateHz.orElseThrow(
                    () -> keys.wrong("rate_hz", "is missing; a counter of samples needs it"))
            : keys.factor("unit", UnitWords::timeToS, "s, ms, us, ns or sample");
    return new TimeColumn(
        Optional.of(keys.column("column")), secondsPerUnit, keys.positive("wraps_at"));
  }

  private static UnitColumns unit(MapKeys keys) {
    double accelToMps2 = keys.factor("accel_unit", UnitWords::accelToMps2, "m/s^2, g or mg");
    double gyroToRadPerS = keys.factor("gyro_unit", UnitWords::rateToRadPerS, "rad/s or deg/s");
    return new UnitColumns(
        point(keys),
        keys.text("serial", ""),
        keys.three("accel"),
        accelToMps2,
        keys.three("gyro"),
        gyroToRadPerS,
        accelToMps2 * keys.positive("accel_full_scale").orElse(Double.POSITIVE_INFINITY),
        gyroToRadPerS * keys.positive("gyro_full_scale").orElse(Double.POSITIVE_INFINITY),
        keys.positive("rate_hz"));
  }

  private static BodyPoint point(MapKeys keys) {
    String word = keys.needed("point");
    return BodyPoint.ofTrackedPoint(word)
        .orElseThrow(
            () ->
                keys.wrong(
                    "point",
                    "\"" + word + "\" is no body point known here. Use " + BodyPoint.words()));
  }
}
