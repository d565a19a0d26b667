package steadyturn.analysis.coach;

import java.util.Locale;

/** Whether something holds: beyond doubt, beyond doubt not, or it cannot be told yet. */
public enum Certainty {
  YES,
  NO,
  NOT_SURE_YET;

  /** The word of the output contract: {@code not-sure-yet}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
