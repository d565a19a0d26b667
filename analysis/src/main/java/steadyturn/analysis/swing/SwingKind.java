package steadyturn.analysis.swing;

import steadyturn.ingest.reason.Worded;

/** A swing that struck a ball, or one that did not. */
public enum SwingKind implements Worded {
  HIT,
  PRACTICE;
}
