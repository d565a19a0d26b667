package steadyturn.ingest.columnmap;

import java.util.regex.Pattern;
import steadyturn.ingest.columnmap.layout.TableShape;

/** Reads the numbers of a table of a given shape. */
record MappedNumber(TableShape shape) {

  private static final Pattern PLAIN =
      Pattern.compile("[-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?");

  boolean isMissing(String cell) {
    return cell.isEmpty() || shape.missing().contains(cell);
  }

  /** Whether the text is a number in this table's notation. */
  boolean isNumber(String cell) {
    return PLAIN.matcher(withDot(cell)).matches();
  }

  double value(String cell) {
    return Double.parseDouble(withDot(cell));
  }

  private String withDot(String cell) {
    if (shape.decimalMark() == '.') {
      return cell;
    }
    return cell.indexOf('.') >= 0 ? "" : cell.replace(shape.decimalMark(), '.');
  }

  String complaint(String cell) {
    char other = shape.decimalMark() == '.' ? ',' : '.';
    boolean otherMark =
        new MappedNumber(withMark(other)).isNumber(cell) && cell.indexOf(other) >= 0;
    return "\""
        + (cell.length() > 24 ? cell.substring(0, 24) + "..." : cell)
        + "\" is not a number. "
        + (otherMark
            ? "Set decimal = \"" + other + "\" in the map if that is its decimal mark."
            : "Add the word to missing in the map if it stands for a lost value.");
  }

  private TableShape withMark(char mark) {
    char delimiter = shape.delimiter() == mark ? '\t' : shape.delimiter();
    return new TableShape(delimiter, "", 0, 0, mark, shape.missing());
  }
}
