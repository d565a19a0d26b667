package steadyturn.fusion.wear.wrist;

import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;

/**
 * A rate as a chain of straight lines of 10 ms that goes on from a known rate and slope and bends
 * no more than wrists do.
 */
@SuppressWarnings("ArrayRecordComponent") // of its own making
record RateChain(double startS, double entry, double slope, double[] knots) {

  private static final double KNOT_S = 0.010;

  /** How much the rate bends, rad/s^3: twice what a brisk release from 1000 to 1800 deg/s does. */
  private static final double BEND_SD = 15000;

  private static final double EXIT_SD_RAD_PER_S = 0.3;

  /** Begins with the slope it enters by, for 20 ms; level then. */
  static RateChain begin(double startS, double endS, double entry, double slope) {
    double[] knots = new double[Math.max(1, (int) Math.ceil((endS - startS) / KNOT_S))];
    for (int j = 0; j < knots.length; j++) {
      knots[j] = entry + slope * Math.min(0.02, (j + 1) * KNOT_S);
    }
    return new RateChain(startS, entry, slope, knots);
  }

  int size() {
    return knots.length;
  }

  RateChain moved(double[] change, int from) {
    double[] next = knots.clone();
    for (int j = 0; j < next.length; j++) {
      next[j] += change[from + j];
    }
    return new RateChain(startS, entry, slope, next);
  }

  RateChain moved(int knot, double by) {
    double[] next = knots.clone();
    next[knot] += by;
    return new RateChain(startS, entry, slope, next);
  }

  double at(double timeS) {
    int j = piece(timeS);
    double left = j == 0 ? entry : knots[j - 1];
    return left + part(timeS, j) * (knots[j] - left);
  }

  private int piece(double timeS) {
    return Math.max(0, Math.min(knots.length - 1, (int) ((timeS - startS) / KNOT_S)));
  }

  private double part(double timeS, int piece) {
    return (timeS - startS) / KNOT_S - piece;
  }

  /** Derivative of the rate at an instant by the knots, times a factor, added from an index on. */
  void addRow(double timeS, double factor, double[] row, int from) {
    int j = piece(timeS);
    row[from + j] += factor * part(timeS, j);
    if (j > 0) {
      row[from + j - 1] += factor * (1 - part(timeS, j));
    }
  }

  /** The chain goes on from the slope it enters by and bends little. */
  void addBends(DMatrixRMaj normal, DMatrixRMaj right, int from) {
    double sd = BEND_SD * KNOT_S * KNOT_S;
    for (int j = 0; j < knots.length; j++) {
      double two = j == 0 ? entry - slope * KNOT_S : j == 1 ? entry : knots[j - 2];
      double one = j == 0 ? entry : knots[j - 1];
      double[] row = new double[normal.numRows];
      row[from + j] = 1;
      if (j > 0) {
        row[from + j - 1] = -2;
      }
      if (j > 1) {
        row[from + j - 2] = 1;
      }
      add(normal, right, row, knots[j] - 2 * one + two, 1 / (sd * sd));
    }
  }

  /** The chain meets a rate that is known at an instant. */
  void addKnown(double timeS, double rate, DMatrixRMaj normal, DMatrixRMaj right, int from) {
    double[] row = new double[normal.numRows];
    addRow(timeS, 1, row, from);
    double weight = 1 / (EXIT_SD_RAD_PER_S * EXIT_SD_RAD_PER_S);
    add(normal, right, row, at(timeS) - rate, weight);
  }

  /** One row of least squares: residual seen as row times unknowns. */
  static void add(
      DMatrixRMaj normal, DMatrixRMaj right, double[] row, double residual, double weight) {
    int[] used = IntStream.range(0, row.length).filter(i -> row[i] != 0).toArray();
    for (int a : used) {
      right.add(a, 0, -weight * row[a] * residual);
      for (int b : used) {
        normal.add(a, b, weight * row[a] * row[b]);
      }
    }
  }
}
