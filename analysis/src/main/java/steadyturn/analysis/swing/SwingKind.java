package steadyturn.analysis.swing;

import steadyturn.ingest.reason.Worded;

/** A swing that struck a ball, one that did not, or a repetition of a drill. */
public enum SwingKind implements Worded {
  HIT,
  PRACTICE,
  DRILL;
}
