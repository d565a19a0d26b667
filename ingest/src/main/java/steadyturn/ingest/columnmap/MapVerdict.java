package steadyturn.ingest.columnmap;

import java.util.List;

/**
 * What gravity and motion say about a map.
 *
 * @param faults what is likely wrong in the map, and what to try
 * @param notices what could not be asked
 */
record MapVerdict(List<String> faults, List<String> notices) {

  MapVerdict {
    faults = List.copyOf(faults);
    notices = List.copyOf(notices);
  }
}
