package steadyturn.ingest.quality;

import steadyturn.ingest.reason.Reason;

/**
 * One thing that was noticed.
 *
 * @param check what was looked at
 * @param verdict what it means for the unit; {@link Verdict#FIT} for a mere note
 * @param what with the figures; what to do about it follows from its code
 */
public record Finding(Check check, Verdict verdict, Reason what) {}
