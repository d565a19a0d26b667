package steadyturn.cli.page.reader;

import java.util.Locale;

/** Lengths in millimetres and centimetres, or in inches. */
public enum LengthUnits {
  METRIC,
  IMPERIAL;

  /** The word of the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
