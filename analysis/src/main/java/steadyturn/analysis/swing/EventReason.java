package steadyturn.analysis.swing;

import steadyturn.ingest.reason.ReasonCode;

/** Why the time of a key position is only estimated. */
public enum EventReason implements ReasonCode {
  FROM_HAND,
  TOP_FROM_HAND,
  SHAFT_FROM_HAND,
  FROM_PELVIS,
  WEAK_BLOW,
  VIRTUAL,
  GAP,
  HALF_SWING,
  REHEARSAL
}
