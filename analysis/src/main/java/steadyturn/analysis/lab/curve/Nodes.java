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
  private final double first;
  private final double last;

  /** The one asked for before: neighbours ask for the same. Threads may each see another. */
  private Piece latest = new Piece(-1, new double[0]);

  private record Piece(int number, double[] coefficients) {}

  private Nodes(double fromS, double stepS, int nodes, IntFunction<double[]> node) {
    this.fromS = fromS;
    this.stepS = stepS;
    this.pieces = nodes - 1;
    this.node = node;
    this.first = node.apply(0)[0];
    this.last = node.apply(pieces)[0];
  }

  /** Through nodes that are known. */
  public static TimeFunction through(double fromS, double stepS, double[][] vra) {
    return new Nodes(fromS, stepS, vra.length, i -> vra[i]);
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
    Piece now = latest;
    if (now.number != i) {
      now = new Piece(i, coefficients(i));
      latest = now;
    }
    PiecewisePolynomial.addPolynomial(now.coefficients, timeS - fromS - i * stepS, out);
  }

  private double[] coefficients(int i) {
    double[] c = Hermite.coefficients(stepS, node.apply(i), node.apply(i + 1));
    double power = 1;
    for (int k = 0; k < c.length; k++) {
      c[k] /= power;
      power *= stepS;
    }
    return c;
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
