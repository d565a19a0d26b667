package steadyturn.ingest.columnmap.layout;

/**
 * Which rows of a table are meant: those with a word in a column.
 *
 * @param word compared as text, blanks around it left out
 */
public record RowChoice(ColumnRef column, String word) {}
