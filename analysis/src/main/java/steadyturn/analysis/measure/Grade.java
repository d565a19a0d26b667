package steadyturn.analysis.measure;

import steadyturn.ingest.reason.Worded;

/**
 * How far a value can be trusted: seen by the units, inferred with a stated assumption, or not
 * given at all.
 */
public enum Grade implements Worded {
  MEASURED,
  ESTIMATED,
  WITHHELD;
}
