package steadyturn.ingest.quality;

import java.util.Locale;

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

  /** The word of the output contract: {@code gyro-bias}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
