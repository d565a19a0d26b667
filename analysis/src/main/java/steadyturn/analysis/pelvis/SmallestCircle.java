package steadyturn.analysis.pelvis;

import org.apache.commons.math3.util.ArithmeticUtils;

/**
 * Radius of the smallest circle that holds all points: Welzl 1991, "Smallest enclosing disks", in
 * the incremental form. The result does not depend on the order of the points, the time does: a
 * path taken along its length costs hundreds of times more than its points scattered, so they are
 * visited in strides of the golden ratio.
 */
public final class SmallestCircle {

  private static final double TOUCH = 1 + 1e-12;

  private double x;
  private double y;
  private double radius;

  /** Points within the root of this from the centre touch the circle or lie in it. */
  private double reach2;

  private SmallestCircle() {}

  /** Radius of the circle, in the unit of the points; 0 for one point. */
  public static double radius(double[] xs, double[] ys) {
    if (xs.length == 0 || xs.length != ys.length) {
      throw new IllegalArgumentException(
          "needs as many x as y, one at least: " + xs.length + " and " + ys.length);
    }
    int stride = stride(xs.length);
    return ofScattered(scattered(xs, stride), scattered(ys, stride));
  }

  private static double ofScattered(double[] xs, double[] ys) {
    SmallestCircle circle = new SmallestCircle();
    circle.x = xs[0];
    circle.y = ys[0];
    circle.reach(0);
    for (int i = 1; i < xs.length; i++) {
      if (!circle.holds(xs[i], ys[i])) {
        circle.throughOne(xs, ys, i);
      }
    }
    return circle.radius;
  }

  private static double[] scattered(double[] values, int stride) {
    double[] out = new double[values.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = values[(int) ((long) i * stride % out.length)];
    }
    return out;
  }

  /** Next to 0.618 n that has no divisor in common with n, so that every point has its turn. */
  private static int stride(int n) {
    int stride = Math.max(1, (int) (0.6180339887 * n));
    while (ArithmeticUtils.gcd(stride, n) != 1) {
      stride++;
    }
    return stride;
  }

  private boolean holds(double px, double py) {
    return (px - x) * (px - x) + (py - y) * (py - y) <= reach2;
  }

  private void reach(double newRadius) {
    radius = newRadius;
    reach2 = (radius * TOUCH + 1e-15) * (radius * TOUCH + 1e-15);
  }

  private void throughOne(double[] xs, double[] ys, int i) {
    x = xs[i];
    y = ys[i];
    reach(0);
    for (int j = 0; j < i; j++) {
      if (!holds(xs[j], ys[j])) {
        throughTwo(xs, ys, i, j);
      }
    }
  }

  private void throughTwo(double[] xs, double[] ys, int i, int j) {
    x = (xs[i] + xs[j]) / 2;
    y = (ys[i] + ys[j]) / 2;
    reach(Math.hypot(xs[i] - x, ys[i] - y));
    for (int k = 0; k < j; k++) {
      if (!holds(xs[k], ys[k])) {
        throughThree(xs[i], ys[i], xs[j], ys[j], xs[k], ys[k]);
      }
    }
  }

  private void throughThree(double ax, double ay, double bx, double by, double cx, double cy) {
    double bax = bx - ax;
    double bay = by - ay;
    double cax = cx - ax;
    double cay = cy - ay;
    double twice = 2 * (bax * cay - bay * cax);
    if (twice == 0) {
      return; // in line: the circle through the outer two holds the third
    }
    double b2 = bax * bax + bay * bay;
    double c2 = cax * cax + cay * cay;
    double ox = (cay * b2 - bay * c2) / twice;
    double oy = (bax * c2 - cax * b2) / twice;
    x = ax + ox;
    y = ay + oy;
    reach(Math.hypot(ox, oy));
  }
}
