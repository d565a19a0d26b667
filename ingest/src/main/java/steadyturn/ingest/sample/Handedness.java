package steadyturn.ingest.sample;

/**
 * Which side the player swings from. Right-handed: the left arm leads and the target lies to the
 * left.
 */
public enum Handedness {
  RIGHT(1),
  LEFT(-1);

  private final int sign;

  Handedness(int sign) {
    this.sign = sign;
  }

  /** h of docs/frames-and-signs.md: +1 for right-handed players, -1 for left-handed. */
  public int sign() {
    return sign;
  }

  /** The word written in files: {@code right} or {@code left}. */
  public String word() {
    return this == RIGHT ? "right" : "left";
  }
}
