package steadyturn.analysis.lab.study;

/**
 * One line of a study.
 *
 * @param study which study and case, for people
 * @param name what was measured
 * @param unit unit of rmse, bias and level
 * @param n number of values
 * @param rmse root of the mean squared error
 * @param bias mean error
 * @param coveragePct share of 95 % intervals that held the truth, percent; NaN where there is none
 * @param score RMS of the error in units of the stated standard deviation: 1 for an honest one; NaN
 *     where there is none
 * @param halfWidth median half width of the 95 % intervals; NaN where there is none
 * @param level what must be reached; NaN where none is set
 * @param aim what we wish for; NaN where none is set
 */
public record StudyRow(
    String study,
    String name,
    String unit,
    int n,
    double rmse,
    double bias,
    double coveragePct,
    double score,
    double halfWidth,
    double level,
    double aim) {

  /**
   * A row that only counts.
   *
   * @param of how many were looked at
   * @param pct how many of them, percent
   */
  static StudyRow share(String study, String name, int of, double pct, double level) {
    double none = Double.NaN;
    return new StudyRow(study, name, "%", of, pct, pct, none, none, none, level, none);
  }

  /** Whether the level is reached; true where none is set. */
  public boolean reached() {
    return Double.isNaN(level) || rmse <= level;
  }

  /** The same figures under another name. */
  public StudyRow renamed(String otherName) {
    return new StudyRow(
        study, otherName, unit, n, rmse, bias, coveragePct, score, halfWidth, level, aim);
  }
}
