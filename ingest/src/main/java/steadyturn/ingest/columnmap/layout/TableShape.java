package steadyturn.ingest.columnmap.layout;

import java.util.List;

/**
 * How a table is laid out.
 *
 * @param delimiter between cells
 * @param comment lines that begin with it are passed over; empty for none
 * @param skipLines lines at the top that are passed over
 * @param headerLines lines above the samples, the first of which names the columns; 0 for none
 * @param decimalMark dot or comma
 * @param missing words of a lost value, besides an empty cell
 */
public record TableShape(
    char delimiter,
    String comment,
    int skipLines,
    int headerLines,
    char decimalMark,
    List<String> missing) {

  public TableShape {
    missing = List.copyOf(missing);
    if (delimiter == decimalMark) {
      throw new IllegalArgumentException(
          "delimiter and decimal mark are both \"" + delimiter + "\"");
    }
  }
}
