package steadyturn.cli.lesson;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.columnmap.ColumnMap;
import steadyturn.ingest.columnmap.ColumnMapImporter;
import steadyturn.ingest.columnmap.Imported;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** The units of one table of another program, for commands that take {@code --map}. */
public final class MappedUnits {

  private MappedUnits() {}

  /**
   * Reads a table by a map that is a file or comes with the program.
   *
   * @param point only the unit worn there; for a map of one unit: where that was worn
   */
  public static List<UnitStream> read(
      Path table, String mapName, Optional<String> point, Console console) {
    ColumnMap map = map(mapName);
    Optional<BodyPoint> wanted = point.map(word -> point(word, console));
    if (wanted.isPresent() && map.points().size() == 1) {
      map = map.at(wanted.get());
    }
    Imported imported = read(table, map, console);
    imported.notices().forEach(console::warn);
    List<UnitStream> units =
        imported.units().stream()
            .filter(unit -> wanted.isEmpty() || unit.point() == wanted.get())
            .toList();
    if (units.isEmpty()) {
      throw console.wrongUsage("the map knows no unit at " + point.orElse("any point"));
    }
    return units;
  }

  /** A map that gravity or motion speak against is told, and taken at its word all the same. */
  private static Imported read(Path table, ColumnMap map, Console console) {
    try {
      return ColumnMapImporter.read(table, map, true);
    } catch (RecordingException e) {
      Imported unchecked = ColumnMapImporter.readUnchecked(table, map);
      console.report(e);
      return unchecked;
    }
  }

  private static ColumnMap map(String name) {
    Path file = Path.of(name);
    boolean isFile = Files.exists(file) || name.endsWith(".toml") || name.endsWith(".json");
    return isFile ? ColumnMap.read(file) : ColumnMap.bundled(name);
  }

  private static BodyPoint point(String word, Console console) {
    return BodyPoint.ofTrackedPoint(word)
        .orElseThrow(() -> console.wrongUsage("there is no body point \"" + word + "\""));
  }
}
