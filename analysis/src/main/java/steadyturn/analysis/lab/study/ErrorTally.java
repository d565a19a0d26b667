package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import steadyturn.analysis.measure.MeasureValue;

/**
 * Collects errors of one quantity, how wide its 95 % intervals are and how often they held the
 * truth.
 */
public final class ErrorTally {

  private int n;
  private double sum;
  private double squares;
  private int covered;
  private int withInterval;
  private double scores;
  private final List<Double> halfWidths = new ArrayList<>();

  /** Adds a value whose interval is known. */
  public void add(double value, double low, double high, double truth) {
    add(value - truth);
    withInterval++;
    double sd = (high - low) / 2 / MeasureValue.Z95;
    halfWidths.add((high - low) / 2);
    scores += (value - truth) * (value - truth) / (sd * sd);
    covered += low <= truth && truth <= high ? 1 : 0;
  }

  /** Adds an error of which no interval is known. */
  public void add(double error) {
    n++;
    sum += error;
    squares += error * error;
  }

  /** Adds a bound of which only is known whether it held. */
  public void addHeld(boolean held) {
    withInterval++;
    covered += held ? 1 : 0;
  }

  public int n() {
    return n;
  }

  public double rmse() {
    return Math.sqrt(squares / Math.max(1, n));
  }

  public double bias() {
    return sum / Math.max(1, n);
  }

  /** Percent; NaN where no intervals were added. */
  public double coveragePct() {
    return withInterval == 0 ? Double.NaN : 100.0 * covered / withInterval;
  }

  /** RMS of the error in stated standard deviations; NaN where no intervals were added. */
  public double score() {
    return withInterval == 0 ? Double.NaN : Math.sqrt(scores / withInterval);
  }

  /** Median half width of the intervals; NaN where none were added. */
  public double halfWidth() {
    if (halfWidths.isEmpty()) {
      return Double.NaN;
    }
    List<Double> sorted = new ArrayList<>(halfWidths);
    Collections.sort(sorted);
    int middle = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(middle)
        : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
  }

  /** The row of a study. */
  public StudyRow row(String study, String name, String unit, double level) {
    return row(study, name, unit, level, Double.NaN);
  }

  /** The row of a study, with a wish beyond its level. */
  public StudyRow row(String study, String name, String unit, double level, double aim) {
    return new StudyRow(
        study, name, unit, n, rmse(), bias(), coveragePct(), score(), halfWidth(), level, aim);
  }
}
