package steadyturn.ingest.columnmap;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.columnmap.layout.MapPart;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Tells what the columns of a table are. Written by hand as TOML or JSON; docs/formats.md lists
 * every key.
 */
public record ColumnMap(String name, List<MapPart> parts) {

  /** The maps that come with the program. */
  static final List<String> BUNDLED =
      List.of(
          "counter-g-degrees",
          "four-units-two-header-lines",
          "handheld-with-optical-truth",
          "tabs-comment-header",
          "time-g-degrees",
          "worn-unit");

  public ColumnMap {
    parts = List.copyOf(parts);
  }

  /** Reads a map from a file that ends in {@code .toml} or {@code .json}. */
  public static ColumnMap read(Path file) {
    try {
      return ColumnMapText.parse(file, Files.readString(file));
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** One of the maps that come with the program. */
  public static ColumnMap bundled(String name) {
    if (!BUNDLED.contains(name)) {
      throw RecordingException.of(
          Path.of(name),
          "is no map that comes with the program. Name one of "
              + String.join(", ", BUNDLED)
              + ", or a file.");
    }
    String file = name + ".toml";
    return ColumnMapText.parse(Path.of(file), Shipped.text(ColumnMap.class, file));
  }

  /** The same map for a unit worn elsewhere; only for a map of one unit. */
  public ColumnMap at(BodyPoint point) {
    if (points().size() != 1) {
      throw RecordingException.of(
          Path.of(name),
          "describes "
              + points().size()
              + " units, so one body point does not fit. Set point in the map.");
    }
    return new ColumnMap(
        name,
        parts.stream()
            .map(
                p ->
                    new MapPart(
                        p.file(),
                        p.table(),
                        p.time(),
                        p.units().stream().map(u -> u.at(point)).toList()))
            .toList());
  }

  /** The body points it has columns for. */
  public List<BodyPoint> points() {
    return units().stream().map(UnitColumns::point).toList();
  }

  /** Each unit with all its columns, wherever they lie, in the map's order. */
  List<UnitColumns> units() {
    Map<BodyPoint, UnitColumns> whole = new LinkedHashMap<>();
    parts.stream()
        .flatMap(part -> part.units().stream())
        .forEach(unit -> whole.merge(unit.point(), unit, UnitColumns::and));
    return List.copyOf(whole.values());
  }
}
