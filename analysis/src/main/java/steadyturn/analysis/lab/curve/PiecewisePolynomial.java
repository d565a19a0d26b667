package steadyturn.analysis.lab.curve;

import java.util.Arrays;

/**
 * Polynomials laid end to end; before the first it keeps that one's starting value, as the first
 * segment must be a constant.
 */
final class PiecewisePolynomial implements TimeFunction {

  private final double[] startS;
  private final double[][] coefficients;

  /** Where to look first. Threads may overwrite each other's: it is a hint, and checked. */
  private int lastFound;

  /**
   * @param startS start of each segment, increasing
   * @param coefficients of each segment, constant term first, in powers of (time - start)
   */
  PiecewisePolynomial(double[] startS, double[][] coefficients) {
    this.startS = startS;
    this.coefficients = coefficients;
  }

  @Override
  public void addTo(double timeS, double[] vra) {
    int segment = segment(timeS);
    addPolynomial(coefficients[segment], timeS - startS[segment], vra);
  }

  /** Instants come one after another: most lie in the segment of the one before. */
  private int segment(double timeS) {
    int last = lastFound;
    if (startS[last] <= timeS && (last + 1 == startS.length || timeS < startS[last + 1])) {
      return last;
    }
    int found = Arrays.binarySearch(startS, timeS);
    int segment = found >= 0 ? found : Math.max(0, -found - 2);
    lastFound = segment;
    return segment;
  }

  /** Horner's rule for value and two derivatives. */
  static void addPolynomial(double[] c, double u, double[] vra) {
    double value = 0;
    double first = 0;
    double halfSecond = 0;
    for (int i = c.length - 1; i >= 0; i--) {
      halfSecond = halfSecond * u + first;
      first = first * u + value;
      value = value * u + c[i];
    }
    vra[0] += value;
    vra[1] += first;
    vra[2] += 2 * halfSecond;
  }
}
