package steadyturn.analysis.lab.unit;

/** The true motion of a unit, as it would feel it without error. */
public interface UnitPath {

  /**
   * Writes specific force (m/s^2) and rate (rad/s) in the unit's own axes.
   *
   * @param timeS true time, s
   */
  void feel(double timeS, double[] specificForceMps2, double[] rateRadPerS);
}
