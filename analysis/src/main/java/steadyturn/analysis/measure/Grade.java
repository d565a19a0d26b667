package steadyturn.analysis.measure;

import java.util.Locale;

/**
 * How far a value can be trusted: seen by the units, inferred with a stated assumption, or not
 * given at all.
 */
public enum Grade {
  MEASURED,
  ESTIMATED,
  WITHHELD;

  /** The word of the output contract. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
