package steadyturn.ingest.columnmap.layout;

/**
 * A column named in a map, by the name in the header or by its number.
 *
 * @param name the header's word; empty when a number is given
 * @param number counted from 1; 0 when a name is given
 * @param sign -1 where the map writes a minus before it, else +1
 */
public record ColumnRef(String name, int number, int sign) {

  public ColumnRef {
    if (name.isEmpty() == (number == 0)) {
      throw new IllegalArgumentException("a column has a name or a number: " + name + number);
    }
  }

  public static ColumnRef named(String text) {
    boolean minus = text.startsWith("-");
    return new ColumnRef(minus ? text.substring(1).strip() : text.strip(), 0, minus ? -1 : 1);
  }

  public static ColumnRef numbered(int number) {
    return new ColumnRef("", Math.abs(number), Integer.signum(number));
  }

  /** The same column with its sign turned where {@code by} is -1. */
  public ColumnRef turned(int by) {
    return new ColumnRef(name, number, sign * by);
  }

  /** As it is written in a map. */
  public String written() {
    String minus = sign < 0 ? "-" : "";
    return name.isEmpty() ? minus + number : "\"" + minus + name + "\"";
  }

  /** As it is named in a message. */
  public String shown() {
    return name.isEmpty() ? "number " + number : name;
  }
}
