package steadyturn.ingest.columnmap;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where time comes from: a column (in a unit of time, or a counter of samples), or the rate alone.
 *
 * @param column empty when samples are counted line by line
 * @param secondsPerUnit what one unit of the column is worth, s; for a counter and for counted
 *     lines one sample's time
 * @param wrapsAt the value at which the column starts again at 0; empty when it does not
 */
record TimeColumn(Optional<ColumnRef> column, double secondsPerUnit, OptionalDouble wrapsAt) {

  TimeColumn {
    if (!(secondsPerUnit > 0)) {
      throw new IllegalArgumentException("a step of time must be above 0 s, was " + secondsPerUnit);
    }
  }
}
