package steadyturn.ingest.quality;

import java.util.Locale;

/** What may be done with a unit's stream; later ones are worse. */
public enum Verdict {
  FIT,
  WIDER_INTERVALS,
  NOT_USABLE;

  /** The word of the output contract: {@code wider-intervals}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The worse of the two. */
  public Verdict worse(Verdict other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
