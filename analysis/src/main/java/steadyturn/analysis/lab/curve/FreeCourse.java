package steadyturn.analysis.lab.curve;

import java.util.ArrayList;
import java.util.List;

/**
 * A movement through freely drawn points: monotone cubics between them (Fritsch and Butland 1984,
 * SIAM J Sci Stat Comput 5:300-304, from memory), taken every 20 ms as the control points of a
 * uniform quintic B-spline. The spline rounds corners within some 15 ms, overshoots nowhere, has
 * four continuous derivatives and is at rest at both ends.
 */
public final class FreeCourse {

  private static final double GRID_S = 0.02;

  /** Control points beyond each end, so that the spline is at rest there. */
  private static final int MARGIN = 3;

  private final List<Double> timesS = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();

  /** A course that starts from here, at rest. */
  public FreeCourse(double timeS, double value) {
    timesS.add(timeS);
    values.add(value);
  }

  /** The next point; one that is not later than the one before is put 10 ms after it. */
  public FreeCourse to(double timeS, double value) {
    timesS.add(Math.max(timeS, endS() + GRID_S / 2));
    values.add(value);
    return this;
  }

  /** When the last point is reached. */
  public double endS() {
    return timesS.get(timesS.size() - 1);
  }

  /** Lays the course on a joint, whose level must be the value of the first point. */
  public void lay(Steps steps) {
    double startS = timesS.get(0) - MARGIN * GRID_S;
    double[] control = new double[(int) Math.ceil((endS() - startS) / GRID_S) + MARGIN];
    double[] slopes = slopes();
    for (int i = 0; i < control.length; i++) {
      control[i] = at(startS + i * GRID_S, slopes);
    }
    double[][] nodes = Nodes.ofSpline(control, GRID_S);
    for (int i = 1; i < nodes.length; i++) {
      double atS = startS + (i - 1) * GRID_S;
      steps.quintic(atS, atS + GRID_S, nodes[i - 1], nodes[i]);
    }
  }

  private double at(double timeS, double[] slopes) {
    int n = timesS.size();
    if (timeS <= timesS.get(0)) {
      return values.get(0);
    }
    if (timeS >= endS()) {
      return values.get(n - 1);
    }
    int i = 0;
    while (timesS.get(i + 1) < timeS) {
      i++;
    }
    double h = timesS.get(i + 1) - timesS.get(i);
    double u = (timeS - timesS.get(i)) / h;
    double from = values.get(i);
    double whole = values.get(i + 1) - from;
    return from
        + u * u * (3 - 2 * u) * whole
        + h * u * (1 - u) * ((1 - u) * slopes[i] - u * slopes[i + 1]);
  }

  private double[] slopes() {
    double[] out = new double[timesS.size()];
    for (int i = 1; i < out.length - 1; i++) {
      double before = timesS.get(i) - timesS.get(i - 1);
      double after = timesS.get(i + 1) - timesS.get(i);
      double left = (values.get(i) - values.get(i - 1)) / before;
      double right = (values.get(i + 1) - values.get(i)) / after;
      if (left * right > 0) {
        double all = 3 * (before + after);
        out[i] = all / ((2 * after + before) / left + (after + 2 * before) / right);
      }
    }
    return out;
  }
}
