package steadyturn.analysis.swing;

import java.util.Locale;

/** A swing that struck a ball, or one that did not. */
public enum SwingKind {
  HIT,
  PRACTICE;

  /** The word of the output contract and of the events file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
