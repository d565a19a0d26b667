package steadyturn.ingest.columnmap.check;

import java.util.List;

/**
 * What gravity and motion say about a map.
 *
 * @param faults what is likely wrong in the map, and what to try
 * @param unasked what could not be asked, and how it can be
 */
public record MapVerdict(List<String> faults, List<String> unasked) {

  public MapVerdict {
    faults = List.copyOf(faults);
    unasked = List.copyOf(unasked);
  }
}
