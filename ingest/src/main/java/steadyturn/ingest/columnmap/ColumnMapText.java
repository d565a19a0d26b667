package steadyturn.ingest.columnmap;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.MapPart;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.RowChoice;
import steadyturn.ingest.columnmap.layout.TableShape;
import steadyturn.ingest.columnmap.layout.TimeColumn;
import steadyturn.ingest.columnmap.layout.TimeText;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.UnitWords;
import steadyturn.ingest.sample.BodyPoint;

/** Turns the text of a column map into a map, with a plain word for every mistake in it. */
final class ColumnMapText {

  private static final List<String> SECTIONS = List.of("table", "time", "unit", "file");
  private static final List<String> FILE_KEYS = List.of("name", "table", "time", "unit");
  private static final List<String> WHERE_KEYS = List.of("column", "is");
  private static final List<String> TABLE_KEYS =
      List.of("delimiter", "comment", "skip_lines", "header_lines", "decimal", "missing");
  private static final List<String> TIME_KEYS =
      List.of("column", "unit", "format", "rate_hz", "wraps_at", "batches");
  private static final List<String> UNIT_KEYS =
      List.of(
          ("point,serial,where,accel,accel_unit,accel_full_scale,gravity,gyro,gyro_unit,"
                  + "gyro_full_scale,dv,dv_unit,dq,dq_unit,rate_hz")
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
      List<MapPart> parts = new ArrayList<>();
      for (JsonNode part : tree.path("file")) {
        MapKeys keys = new MapKeys(file, "file", part, FILE_KEYS);
        JsonNode table = part.has("table") ? part.path("table") : tree.path("table");
        JsonNode time = part.has("time") ? part.path("time") : tree.path("time");
        parts.add(part(keys.needed("name"), table, time, part.path("unit")));
      }
      if (parts.isEmpty()) {
        parts.add(part("", tree.path("table"), tree.path("time"), tree.path("unit")));
      } else if (tree.has("unit")) {
        throw top.wrong("unit", "belongs to a file here. Write [[file.unit]] below its [[file]]");
      }
      ColumnMap map = new ColumnMap(String.valueOf(file.getFileName()), parts);
      requireWhole(map, top);
      return map;
    } catch (IllegalArgumentException e) {
      throw RecordingException.of(file, e.getMessage() + ". Mend the map.");
    }
  }

  private MapPart part(String name, JsonNode table, JsonNode time, JsonNode unitNodes) {
    List<UnitColumns> units = new ArrayList<>();
    TableShape shape = table(new MapKeys(file, "table", table, TABLE_KEYS));
    TimeColumn clock = time(new MapKeys(file, "time", time, TIME_KEYS));
    for (JsonNode unit : unitNodes) {
      units.add(unit(new MapKeys(file, "unit", unit, UNIT_KEYS)));
    }
    return new MapPart(name, shape, clock, units);
  }

  /** Each unit has both its sensors, each of them once. */
  private static void requireWhole(ColumnMap map, MapKeys top) {
    if (map.units().isEmpty()) {
      throw top.wrong("unit", "is missing. Write one section [[unit]] for each unit");
    }
    Map<BodyPoint, UnitColumns> seen = new EnumMap<>(BodyPoint.class);
    map.parts().stream()
        .flatMap(part -> part.units().stream())
        .forEach(
            unit -> {
              UnitColumns before = seen.get(unit.point());
              if (before != null && before.clash(unit).isPresent()) {
                throw top.wrong(
                    "unit",
                    "two units claim the same body point (" + before.clash(unit).get() + ")");
              }
              seen.merge(unit.point(), unit, UnitColumns::and);
            });
    seen.forEach(
        (point, unit) -> {
          if (unit.accel().isEmpty() || unit.gyro().isEmpty()) {
            throw top.wrong(
                unit.accel().isEmpty() ? "accel" : "gyro",
                "is missing for " + point.trackedPoint() + "; a unit needs both sensors");
          }
        });
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
    boolean isOfBatches = keys.truth("batches");
    if (!keys.has("column")) {
      double stepS =
          1
              / rateHz.orElseThrow(
                  () -> keys.wrong("column", "is missing, and so is rate_hz. Give one of the two"));
      return new TimeColumn(List.of(), stepS, OptionalDouble.empty(), Optional.empty(), false);
    }
    String unit = keys.needed("unit");
    boolean isText = unit.equals("text");
    List<ColumnRef> columns = keys.columns("column", 1, isText ? 2 : 1);
    double secondsPerUnit =
        switch (unit) {
          case "sample" ->
              1
                  / rateHz.orElseThrow(
                      () -> keys.wrong("rate_hz", "is missing; a counter of samples needs it"));
          case "text" -> 1;
          default -> keys.factor("unit", UnitWords::timeToS, "s, ms, us, ns, sample or text");
        };
    Optional<TimeText> text =
        Optional.of(keys.text("format", ""))
            .filter(format -> isText)
            .map(format -> format.isEmpty() ? TimeText.ISO : TimeText.of(format));
    return new TimeColumn(columns, secondsPerUnit, keys.positive("wraps_at"), text, isOfBatches);
  }

  private UnitColumns unit(MapKeys keys) {
    Optional<MappedVector> accel = vector(keys, "accel", "accel_unit");
    Optional<MappedVector> gyro = vector(keys, "gyro", "gyro_unit");
    Optional<MappedVector> dv = vector(keys, "dv", "dv_unit");
    Optional<MappedVector> dq = vector(keys, "dq", "dq_unit");
    if ((accel.isPresent() && dv.isPresent()) || (gyro.isPresent() && dq.isPresent())) {
      throw keys.wrong("dv", "and dq stand in place of accel and gyro, not beside them");
    }
    return new UnitColumns(
        point(keys),
        keys.text("serial", ""),
        where(keys),
        accel.or(() -> dv),
        vector(keys, "gravity", "accel_unit"),
        gyro.or(() -> dq),
        keys.positive("rate_hz"));
  }

  private Optional<RowChoice> where(MapKeys keys) {
    return keys.section("where", WHERE_KEYS)
        .map(where -> new RowChoice(where.columns("column", 1, 1).get(0), where.needed("is")));
  }

  /** A vector's columns in their unit; empty where the map has none of that key. */
  private static Optional<MappedVector> vector(MapKeys keys, String key, String unitKey) {
    if (!keys.has(key)) {
      return Optional.empty();
    }
    List<ColumnRef> columns = keys.columns(key, 3, key.equals("dq") ? 4 : 3);
    if (columns.size() == 4) {
      return Optional.of(new MappedVector(key, columns, 1, Double.POSITIVE_INFINITY));
    }
    double toSi =
        switch (unitKey) {
          case "accel_unit" -> keys.factor(unitKey, UnitWords::accelToMps2, "m/s^2, g or mg");
          case "gyro_unit" -> keys.factor(unitKey, UnitWords::rateToRadPerS, "rad/s or deg/s");
          case "dv_unit" -> keys.factor(unitKey, ColumnMapText::velocityToMps, "m/s");
          default -> keys.factor(unitKey, ColumnMapText::angleToRad, "rad or deg");
        };
    double fullScale = keys.positive(key + "_full_scale").orElse(Double.POSITIVE_INFINITY);
    return Optional.of(new MappedVector(key, columns, toSi, toSi * fullScale));
  }

  private static OptionalDouble velocityToMps(String word) {
    return word.equals("m/s") ? OptionalDouble.of(1) : OptionalDouble.empty();
  }

  private static OptionalDouble angleToRad(String word) {
    return switch (word) {
      case "rad" -> OptionalDouble.of(1);
      case "deg" -> OptionalDouble.of(Math.toRadians(1));
      default -> OptionalDouble.empty();
    };
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
