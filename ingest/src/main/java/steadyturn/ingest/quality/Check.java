package steadyturn.ingest.quality;

import java.util.Locale;
import steadyturn.ingest.words.Words;

/** What was looked at; one finding names one of these. */
public enum Check {
  LENGTH,
  RATE,
  LOSS,
  GAP,
  SATURATION,
  STUCK,
  FROZEN,
  REST,
  NOISE,
  GYRO_BIAS,
  GRAVITY,
  SWAPPED,
  OVERLAP;

  /** The check's name as people read it. */
  public String words() {
    return Words.say("quality.check." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }
}
