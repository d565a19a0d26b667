package steadyturn.analysis.swing;

import steadyturn.ingest.reason.Worded;

/**
 * The key positions of a full swing, in the order they come (the pelvis may turn round before or
 * after the top).
 */
public enum SwingEvent implements Worded {
  ADDRESS,
  TAKEAWAY,
  LEAD_ARM_LEVEL_BACK,
  PELVIS_TURNAROUND,
  TOP,
  LEAD_ARM_LEVEL_DOWN,
  SHAFT_LEVEL_DOWN,
  IMPACT,
  LEAD_ARM_LEVEL_THROUGH,
  FINISH;
}
