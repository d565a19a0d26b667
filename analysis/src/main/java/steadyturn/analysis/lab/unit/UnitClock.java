package steadyturn.analysis.lab.unit;

/**
 * How a unit tells the time, against the true time of the simulation.
 *
 * @param startS true time of its first sample, s
 * @param shownStartS what the recording's common axis says of that sample, s
 * @param skew by how much its clock runs fast: 30e-6 gains 30 us in a second
 */
public record UnitClock(double startS, double shownStartS, double skew) {

  /** What the unit's time column shows at a true time. */
  public double shownS(double trueS) {
    return shownStartS + (trueS - startS) * (1 + skew);
  }

  /** The true time at which the time column shows an instant. */
  public double trueS(double shownS) {
    return startS + (shownS - shownStartS) / (1 + skew);
  }
}
