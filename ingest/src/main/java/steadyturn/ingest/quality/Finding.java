package steadyturn.ingest.quality;

import steadyturn.ingest.reason.Reason;

/**
 * One thing that was noticed.
 *
 * @param verdict what it means for the unit; {@link Verdict#FIT} for a mere note
 * @param what with the figures; what to do about it follows from its code
 */
public record Finding(Verdict verdict, Reason what) {

  static Finding of(Verdict verdict, QualityReason code, Object... figures) {
    return new Finding(verdict, Reason.of(code, figures));
  }
}
