package steadyturn.ingest.quality;

import java.util.Locale;
import steadyturn.ingest.words.Words;

/** What may be done with a unit's stream; later ones are worse. */
public enum Verdict {
  FIT,
  WIDER_INTERVALS,
  NOT_USABLE;

  /** The verdict as people read it. */
  public String words() {
    return Words.say("quality.verdict." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** The worse of the two. */
  public Verdict worse(Verdict other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
