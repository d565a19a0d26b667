package steadyturn.ingest.columnmap.layout;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where time comes from: a column (in a unit of time, or a counter of samples), date and time as
 * text in one or two columns, or the rate alone.
 *
 * @param columns empty when samples are counted line by line; two are date and time
 * @param secondsPerUnit what one unit of the column is worth, s; for a counter and for counted
 *     lines one sample's time
 * @param wrapsAt the value at which the column starts again at 0; empty when it does not
 * @param text how dates and times are written; empty for numbers
 * @param isOfBatches whether samples that were sent together share a time
 */
public record TimeColumn(
    List<ColumnRef> columns,
    double secondsPerUnit,
    OptionalDouble wrapsAt,
    Optional<TimeText> text,
    boolean isOfBatches) {

  public TimeColumn {
    columns = List.copyOf(columns);
    if (!(secondsPerUnit > 0)) {
      throw new IllegalArgumentException("a step of time must be above 0 s, was " + secondsPerUnit);
    }
  }
}
