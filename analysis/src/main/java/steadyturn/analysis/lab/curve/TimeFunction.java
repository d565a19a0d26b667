package steadyturn.analysis.lab.curve;

/** A quantity over time that knows its first two derivatives exactly. Safe to share by threads. */
public interface TimeFunction {

  /** Adds value, first and second derivative at the instant to {@code vra[0..2]}. */
  void addTo(double timeS, double[] vra);

  /** The value at an instant. */
  default double at(double timeS) {
    double[] vra = new double[3];
    addTo(timeS, vra);
    return vra[0];
  }

  /** The first derivative at an instant, per second. */
  default double rateAt(double timeS) {
    double[] vra = new double[3];
    addTo(timeS, vra);
    return vra[1];
  }

  /** The sum of several functions, added in their order. */
  static TimeFunction sum(TimeFunction... parts) {
    return Sum.of(parts);
  }

  /** A quantity that keeps one value. */
  static TimeFunction constant(double value) {
    return new Constant(value);
  }
}
