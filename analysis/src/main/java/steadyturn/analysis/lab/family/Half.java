package steadyturn.analysis.lab.family;

import java.util.Locale;

/** Families for tuning the analysis, and families that only judge it. */
public enum Half {
  TUNING,
  JUDGING;

  /** The word of the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  @Override
  public String toString() {
    return word();
  }
}
