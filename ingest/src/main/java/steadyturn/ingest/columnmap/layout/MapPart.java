package steadyturn.ingest.columnmap.layout;

import java.util.List;

/**
 * One table of a map.
 *
 * @param file its name within a folder; empty where the map is of one table, named with the map
 */
public record MapPart(String file, TableShape table, TimeColumn time, List<UnitColumns> units) {

  public MapPart {
    units = List.copyOf(units);
  }
}
