package steadyturn.analysis.rows;

import java.io.IOException;
import steadyturn.ingest.sample.Offered;

/** Takes the rows of all tables as they come. */
@Offered
@FunctionalInterface
public interface RowSink {

  /**
   * One row.
   *
   * @param cells in the order of the table's columns: a {@code String}, an {@code Integer}, a
   *     {@code BigDecimal}; an empty string where there is nothing, a withheld value among them
   */
  void row(RowTable table, Object... cells) throws IOException;
}
