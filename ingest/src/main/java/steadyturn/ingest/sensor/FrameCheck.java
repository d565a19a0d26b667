package steadyturn.ingest.sensor;

/**
 * How well a unit's frames are checked, and so how often a damaged one passes for a true one. An
 * adapter can look at no more than its unit sends.
 */
public enum FrameCheck {
  /** Nothing but known first bytes, lengths and plausible values. */
  NONE(0),
  /** A sum or the like: one damaged frame in 256 passes. */
  BITS_8(8),
  /** A CRC or the like: one in 65,536. */
  BITS_16(16),
  /** So many that none is met in practice. */
  BITS_24(24);

  private final int bits;

  FrameCheck(int bits) {
    this.bits = bits;
  }

  /** At least so many bits. */
  public int bits() {
    return bits;
  }

  /** Share of damaged frames that may pass: twice that of chance. 1 where nothing is checked. */
  public double mostInvented() {
    return Math.min(1, 2 * Math.pow(2, -bits));
  }
}
