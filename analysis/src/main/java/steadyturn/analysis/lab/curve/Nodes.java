package steadyturn.analysis.lab.curve;

import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Courses given by value, first and second derivative at even steps of time: quintics from node to
 * node; before the first and after the last it keeps their values. A quintic is made when an
 * instant in it is asked for, as those of hours would fill the memory.
 */
public final class Nodes implements TimeFunction {

  private final double fromS;
  private final double stepS;
  private final int pieces;
  private final IntFunction<double[]> node;
  private final double[] powersOfStep = new double[6];
  private final double first;
  private final double last;

  /** The one asked for before: neighbours ask for the same. Threads may each see another. */
  private Quintic latest = new Quintic(-1, 0, 0, 0, 0, 0, 0);

  /** A piece: its number, and the coefficients of the powers of the time since its start. */
  private record Quintic(
      int number, double c0, double c1, double c2, double c3, double c4, double c5) {

    /** As {@link PiecewisePolynomial#addPolynomial}, its loop written out. */
    void addTo(double u, double[] vra) {
      double value = c5 * u + c4;
      double first = c5 * u + value;
      double halfSecond = c5 * u + first;
      value = value * u + c3;
      first = first * u + value;
      value = value * u + c2;
      halfSecond = halfSecond * u + first;
      first = first * u + value;
      value = value * u + c1;
      vra[0] += value * u + c0;
      vra[1] += first * u + value;
      vra[2] += 2 * (halfSecond * u + first);
    }
  }

  private Nodes(double fromS, double stepS, int nodes, IntFunction<double[]> node) {
    this.fromS = fromS;
    this.stepS = stepS;
    this.pieces = nodes - 1;
    this.node = node;
    this.first = node.apply(0)[0];
    this.last = node.apply(pieces)[0];
    powersOfStep[0] = 1;
    for (int k = 1; k < powersOfStep.length; k++) {
      powersOfStep[k] = powersOfStep[k - 1] * stepS;
    }
  }

  /**
   * Through nodes that are known.
   *
   * @param vra value, rate and acceleration of the first node, then those of the next
   */
  public static TimeFunction through(double fromS, double stepS, double[] vra) {
    return new Nodes(
        fromS,
        stepS,
        vra.length / 3,
        i -> new double[] {vra[3 * i], vra[3 * i + 1], vra[3 * i + 2]});
  }

  /** Along a spline, as {@link #ofSpline}. */
  static TimeFunction spline(double fromS, double stepS, double[] control) {
    return new Nodes(fromS, stepS, control.length, i -> ofSpline(control, stepS, i));
  }

  @Override
  public void addTo(double timeS, double[] out) {
    double x = (timeS - fromS) / stepS;
    if (x < 0 || x >= pieces) {
      out[0] += x < 0 ? first : last;
      return;
    }
    int i = (int) x;
    Quintic now = latest;
    if (now.number != i) {
      now = quintic(i);
      latest = now;
    }
    now.addTo(timeS - fromS - i * stepS, out);
  }

  private Quintic quintic(int i) {
    double[] c = Hermite.coefficients(stepS, node.apply(i), node.apply(i + 1));
    double[] p = powersOfStep;
    return new Quintic(i, c[0], c[1] / p[1], c[2] / p[2], c[3] / p[3], c[4] / p[4], c[5] / p[5]);
  }

  /** The uniform quintic B-spline of control points: one node a point, at rest beyond both ends. */
  public static double[][] ofSpline(double[] control, double stepS) {
    return IntStream.range(0, control.length)
        .mapToObj(i -> ofSpline(control, stepS, i))
        .toArray(double[][]::new);
  }

  private static double[] ofSpline(double[] control, double stepS, int i) {
    double outer = at(control, i - 2) + at(control, i + 2);
    double inner = at(control, i - 1) + at(control, i + 1);
    return new double[] {
      (outer + 26 * inner + 66 * control[i]) / 120,
      (at(control, i + 2) - at(control, i - 2) + 10 * (at(control, i + 1) - at(control, i - 1)))
          / (24 * stepS),
      (outer + 2 * inner - 6 * control[i]) / (6 * stepS * stepS)
    };
  }

  private static double at(double[] control, int i) {
    return control[Math.max(0, Math.min(control.length - 1, i))];
  }
}
