package steadyturn.analysis.compare;

import java.util.List;
import steadyturn.ingest.reason.Reason;

/**
 * Groups compared pair by pair.
 *
 * @param groups names in the order given
 * @param rows for each pair of groups, the measures in the order asked for
 * @param notices what a reader should know before believing a row
 */
public record Comparison(List<String> groups, List<ComparisonRow> rows, List<Reason> notices) {

  public Comparison {
    groups = List.copyOf(groups);
    rows = List.copyOf(rows);
    notices = List.copyOf(notices);
  }
}
