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

  /**
   * Read from the range alone, so that no reader of the range can come to another answer: real
   * where it leaves out zero, the same where it lies within the margin.
   */
  static ComparisonVerdict of(MeanDifference difference, double margin) {
    boolean within = difference.low() > -margin && difference.high() < margin;
    if (difference.low() > 0 || difference.high() < 0) {
      return within ? REAL_BUT_SMALL : REAL;
    }
    return within ? SAME : NOT_SHOWN;
  }
}
