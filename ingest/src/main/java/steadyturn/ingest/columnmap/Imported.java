package steadyturn.ingest.columnmap;

import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * The units of a table that was read through a map.
 *
 * @param units on the table's own time axis
 * @param notices what was left out, and what could not be checked, one sentence each
 */
public record Imported(List<UnitStream> units, List<String> notices) {

  public Imported {
    units = List.copyOf(units);
    notices = List.copyOf(notices);
  }
}
