package steadyturn.ingest.lab;

import java.util.List;

/**
 * What goes wrong at a virtual unit.
 *
 * @param dropPct samples never sent, percent
 * @param damagePct samples with one flipped bit, percent
 * @param noisePct samples followed by up to 20 random bytes, percent
 * @param jitterS bytes wait up to so long and then come in a burst, s
 * @param skewPpm how much too slow its clock runs, millionths
 * @param unplugged stretches in which it is unplugged
 */
public record UnitFaults(
    double dropPct,
    double damagePct,
    double noisePct,
    double jitterS,
    double skewPpm,
    List<Stretch> unplugged) {

  /** Nothing goes wrong. */
  public static final UnitFaults NONE = new UnitFaults(0, 0, 0, 0, 0, List.of());

  public UnitFaults {
    unplugged = List.copyOf(unplugged);
  }

  /**
   * A stretch of time since the start, s.
   *
   * @param fromS start
   * @param toS end
   */
  public record Stretch(double fromS, double toS) {

    public Stretch {
      if (!(toS > fromS)) {
        throw new IllegalArgumentException("a stretch must end after " + fromS + ", not " + toS);
      }
    }

    /** The same on an axis that begins so much earlier. */
    public Stretch later(double byS) {
      return new Stretch(fromS + byS, toS + byS);
    }

    /** Whether an instant lies in it. */
    public boolean holds(double timeS) {
      return timeS >= fromS && timeS < toS;
    }
  }

  boolean isUnpluggedAt(double timeS) {
    return unplugged.stream().anyMatch(s -> s.holds(timeS));
  }
}
