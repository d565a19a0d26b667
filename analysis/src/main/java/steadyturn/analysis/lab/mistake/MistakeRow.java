package steadyturn.analysis.lab.mistake;

import java.util.List;

/**
 * What became of one mistake.
 *
 * @param name of it; {@link #SOUND} for lessons without one
 * @param lessons it was done to
 * @param named lessons in which it was called by a right cause; without one, in which anything was
 *     refused
 * @param unnamed seeds of the others, of sound lessons those in which something was refused
 * @param swings that the analysis gave values of
 * @param values given of them
 * @param missed of these, whose interval does not hold the truth
 */
public record MistakeRow(
    String name, int lessons, int named, List<Long> unnamed, int swings, int values, int missed) {

  static final String SOUND = "(none: refused)";

  private static final double LEAST_NAMED_PCT = 95;
  private static final double MOST_MISSED_PCT = 5;
  private static final double MOST_FALSE_PCT = 1;

  public MistakeRow {
    unnamed = List.copyOf(unnamed);
  }

  public double namedPct() {
    return 100.0 * named / Math.max(1, lessons);
  }

  /** Percent of the values given; 0 where none was. */
  public double missedPct() {
    return 100.0 * missed / Math.max(1, values);
  }

  public boolean isSound() {
    return name.equals(SOUND);
  }

  /** Whether it was called often enough by its name, or sound lessons seldom enough refused. */
  public boolean isNamed() {
    return isSound() ? namedPct() <= MOST_FALSE_PCT : namedPct() >= LEAST_NAMED_PCT;
  }

  /** Whether what was given in spite of it is seldom enough wrong. */
  public boolean isHonest() {
    return missedPct() <= MOST_MISSED_PCT;
  }
}
