package steadyturn.analysis.compare;

import steadyturn.ingest.reason.Worded;

/** What a comparison of two groups has shown. */
public enum ComparisonVerdict implements Worded {
  /** Larger than spread and measuring error can explain, all rows looked at together. */
  REAL,
  /** Real, and yet shown to lie within the margin that does not matter. */
  REAL_BUT_SMALL,
  /** Shown to lie within the margin. */
  SAME,
  /** Neither: could be there, could be not. */
  NOT_SHOWN,
  /** Under three swings with a value in one of the groups. */
  TOO_FEW_SWINGS;

  static ComparisonVerdict of(boolean real, boolean withinMargin) {
    if (real) {
      return withinMargin ? REAL_BUT_SMALL : REAL;
    }
    return withinMargin ? SAME : NOT_SHOWN;
  }
}
