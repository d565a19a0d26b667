package steadyturn.analysis.coach;

import steadyturn.ingest.reason.Worded;

/** Whether something holds: beyond doubt, beyond doubt not, or it cannot be told yet. */
public enum Certainty implements Worded {
  YES,
  NO,
  NOT_SURE_YET;
}
