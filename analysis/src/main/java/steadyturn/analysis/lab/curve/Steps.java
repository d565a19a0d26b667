package steadyturn.analysis.lab.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Builds a quantity as a starting value plus smooth steps that may overlap. Each step follows the
 * polynomial of least degree with zero velocity, acceleration and jerk at both ends, S(u) = 35 u^4
 * - 84 u^5 + 70 u^6 - 20 u^7 (our choice: smooth enough for an accelerometer); its peak rate is
 * 35/16 of its mean rate. A ramp is a stretch of constant rate between two smooth changes of rate.
 */
public final class Steps {

  private static final double[] STEP = {0, 0, 0, 0, 35, -84, 70, -20};

  /** Integral of S: by how much a smooth start of a constant rate moves. */
  private static final double[] RISE = {0, 0, 0, 0, 0, 7, -14, 10, -2.5};

  private record Piece(double startS, double endS, double scale, double rate, double[] shape) {
    /** Adds its Taylor series about an instant inside, in powers of time, to {@code out}. */
    void addTaylor(double atS, double[] out) {
      double length = endS - startS;
      double u = (atS - startS) / length;
      double[] c = shape.clone();
      // repeated synthetic division shifts the polynomial to u
      for (int k = 0; k < c.length; k++) {
        for (int i = c.length - 2; i >= k; i--) {
          c[i] += u * c[i + 1];
        }
      }
      double power = 1;
      for (int k = 0; k < c.length; k++) {
        out[k] += scale * c[k] / power;
        power *= length;
      }
      out[0] += rate * (atS - startS);
      out[1] += rate;
    }

    double total() {
      double sum = 0;
      for (double c : shape) {
        sum += c;
      }
      return scale * sum + rate * (endS - startS);
    }
  }

  private final List<Piece> pieces = new ArrayList<>();
  private final double start;
  private double level;

  public Steps(double start) {
    this.start = start;
    this.level = start;
  }

  /** S(u) for u clamped to 0..1. */
  public static double shape(double u) {
    double x = Math.max(0, Math.min(1, u));
    return x * x * x * x * (35 + x * (-84 + x * (70 - 20 * x)));
  }

  /** The value once everything added so far has ended. */
  public double level() {
    return level;
  }

  /** Adds a smooth step. */
  public Steps by(double fromS, double toS, double change) {
    if (!(toS > fromS)) {
      throw new IllegalArgumentException("a step from " + fromS + " s to " + toS + " s");
    }
    add(new Piece(fromS, toS, change, 0, STEP));
    return this;
  }

  /** Adds the smooth step that brings the level to {@code target}. */
  public Steps to(double fromS, double toS, double target) {
    return by(fromS, toS, target - level);
  }

  /**
   * Two overlapping steps that pass through {@code viaValue} at {@code viaS} exactly and end at
   * {@code target}: the way through impact to the finish. Steps added earlier must have ended by
   * {@code viaS}.
   */
  public Steps through(
      double fromS,
      double firstEndS,
      double viaS,
      double viaValue,
      double secondFromS,
      double toS,
      double target) {
    double first = shape((viaS - fromS) / (firstEndS - fromS));
    double second = shape((viaS - secondFromS) / (toS - secondFromS));
    double whole = target - level;
    double change = (viaValue - level - whole * second) / (first - second);
    by(fromS, firstEndS, change);
    return by(secondFromS, toS, whole - change);
  }

  /** Adds a stretch of constant rate whose start and end are smoothed over {@code blendS}. */
  public Steps ramp(double fromS, double toS, double ratePerS, double blendS) {
    if (!(toS - fromS >= 2 * blendS)) {
      throw new IllegalArgumentException(
          "a ramp of " + (toS - fromS) + " s has no room for two blends of " + blendS + " s");
    }
    add(new Piece(fromS, fromS + blendS, ratePerS * blendS, 0, RISE));
    add(new Piece(fromS + blendS, toS - blendS, 0, ratePerS, new double[] {0, 0}));
    // the end is the start run the other way: rate minus its own rise
    add(new Piece(toS - blendS, toS, -ratePerS * blendS, ratePerS, RISE));
    return this;
  }

  /**
   * Moves on by the quintic that has given value, rate and acceleration at both ends, the value
   * counted from the level; for courses that come as nodes. Whoever begins with a rate must end
   * with none, or go on at once.
   */
  public Steps quintic(double fromS, double toS, double[] fromVra, double[] toVra) {
    double[] c = Hermite.coefficients(toS - fromS, fromVra, toVra);
    c[0] = 0;
    add(new Piece(fromS, toS, 1, 0, c));
    return this;
  }

  private void add(Piece piece) {
    pieces.add(piece);
    level += piece.total();
  }

  /** The sum as one function. */
  public TimeFunction build() {
    if (pieces.isEmpty()) {
      return TimeFunction.constant(start);
    }
    double[] breaks = breaks();
    double[][] coefficients = new double[breaks.length][];
    List<Piece> byStart = new ArrayList<>(pieces);
    byStart.sort((a, b) -> Double.compare(a.startS, b.startS));
    List<Piece> active = new ArrayList<>();
    double base = start;
    int next = 0;
    for (int i = 0; i < breaks.length; i++) {
      double at = breaks[i];
      while (next < byStart.size() && byStart.get(next).startS <= at) {
        active.add(byStart.get(next++));
      }
      base += active.stream().filter(p -> p.endS <= at).mapToDouble(Piece::total).sum();
      active.removeIf(p -> p.endS <= at);
      coefficients[i] = segment(base, at, active);
    }
    return new PiecewisePolynomial(breaks, coefficients);
  }

  private static double[] segment(double base, double atS, List<Piece> active) {
    if (active.isEmpty()) {
      return new double[] {base};
    }
    double[] c = new double[9];
    c[0] = base;
    for (Piece piece : active) {
      piece.addTaylor(atS, c);
    }
    int used = c.length;
    while (used > 1 && c[used - 1] == 0) {
      used--;
    }
    return Arrays.copyOf(c, used);
  }

  private double[] breaks() {
    double first = pieces.stream().mapToDouble(Piece::startS).min().orElse(0) - 1;
    double[] all = new double[2 * pieces.size() + 1];
    all[0] = first;
    for (int i = 0; i < pieces.size(); i++) {
      all[2 * i + 1] = pieces.get(i).startS;
      all[2 * i + 2] = pieces.get(i).endS;
    }
    return Arrays.stream(all).sorted().distinct().toArray();
  }
}
