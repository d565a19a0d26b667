package steadyturn.analysis.lab;

import java.util.Locale;

/** What the player does before the first ball, in this order. */
public enum WearStep {
  TABLE_REST,
  AIM,
  QUIET_STANCE,
  BOW,
  NEUTRAL_WRIST,
  COCKING,
  TURN_ON_SPOT;

  /** The word of the events file: {@code quiet-stance}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
