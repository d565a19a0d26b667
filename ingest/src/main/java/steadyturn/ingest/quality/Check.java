package steadyturn.ingest.quality;

/** What was looked at; one finding names one of these. */
public enum Check {
  LENGTH("length"),
  RATE("rate"),
  LOSS("lost samples"),
  GAP("gap"),
  SATURATION("saturation"),
  STUCK("stuck channel"),
  FROZEN("frozen values"),
  REST("rest"),
  NOISE("noise"),
  GYRO_BIAS("gyroscope bias"),
  GRAVITY("accelerometer at rest"),
  SWAPPED("swapped units"),
  OVERLAP("overlap in time");

  private final String words;

  Check(String words) {
    this.words = words;
  }

  /** The check's name as people read it. */
  public String words() {
    return words;
  }
}
