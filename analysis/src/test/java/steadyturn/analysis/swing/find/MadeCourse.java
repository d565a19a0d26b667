package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A course through points with given value, rate and acceleration, joined by polynomials of the
 * fifth degree (the minimum-jerk movement between two stops is one of them: Flash and Hogan 1985, J
 * Neurosci 5:1688-1703). Constant before the first and after the last.
 */
final class MadeCourse implements DoubleUnaryOperator {

  private record Point(double t, double value, double rate, double bend) {}

  private final List<Point> points = new ArrayList<>();

  static MadeCourse from(double t, double value) {
    return new MadeCourse().via(t, value, 0, 0);
  }

  static DoubleUnaryOperator none() {
    return t -> 0;
  }

  MadeCourse via(double t, double value, double rate, double bend) {
    points.add(new Point(t, value, rate, bend));
    return this;
  }

  /** A stop. */
  MadeCourse to(double t, double value) {
    return via(t, value, 0, 0);
  }

  double lastS() {
    return points.get(points.size() - 1).t();
  }

  @Override
  public double applyAsDouble(double t) {
    Point a = points.get(0);
    for (Point b : points) {
      if (t < b.t()) {
        return t <= a.t() ? a.value() : between(a, b, t);
      }
      a = b;
    }
    return a.value();
  }

  private static double between(Point a, Point b, double t) {
    double span = b.t() - a.t();
    double u = (t - a.t()) / span;
    double v0 = a.rate() * span;
    double v1 = b.rate() * span;
    double c0 = a.bend() * span * span / 2;
    double c1 = b.bend() * span * span / 2;
    double d = b.value() - a.value() - v0 - c0;
    double e = v1 - v0 - 2 * c0;
    double f = c1 - c0;
    double cubic = 10 * d - 4 * e + f;
    double fourth = -15 * d + 7 * e - 2 * f;
    double fifth = 6 * d - 3 * e + f;
    return a.value() + u * (v0 + u * (c0 + u * (cubic + u * (fourth + u * fifth))));
  }
}
