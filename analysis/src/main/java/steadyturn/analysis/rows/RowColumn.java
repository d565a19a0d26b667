package steadyturn.analysis.rows;

/**
 * A column of a table.
 *
 * @param name small letters, with the unit behind where it has one: {@code time_s}
 */
public record RowColumn(String name, Kind kind) {

  /** What its cells hold: a text, a whole number or a decimal number. */
  public enum Kind {
    TEXT,
    WHOLE,
    NUMBER
  }
}
