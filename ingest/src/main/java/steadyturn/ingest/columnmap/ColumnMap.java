package steadyturn.ingest.columnmap;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Tells what the columns of a table are. Written by hand as TOML or JSON; docs/formats.md lists
 * every key.
 */
public record ColumnMap(String name, TableShape table, TimeColumn time, List<UnitColumns> units) {

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
    units = List.copyOf(units);
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
    if (units.size() != 1) {
      throw RecordingException.of(
          Path.of(name),
          "describes "
              + units.size()
              + " units, so one body point does not fit. Set point in the map.");
    }
    return new ColumnMap(name, table, time, List.of(units.get(0).at(point)));
  }

  /** The body points it has columns for. */
  public List<BodyPoint> points() {
    return units.stream().map(UnitColumns::point).toList();
  }
}
