package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit that rests for a second, then turns by a known angle in a second about an axis of its own,
 * and so on; gravity goes by the parts of it along and across the axis. No noise, no bias.
 */
final class TurnedUnit {

  static final double RATE_HZ = 100;
  private static final int STEPS = 100;

  private final List<double[]> accel = new ArrayList<>();
  private final List<double[]> gyro = new ArrayList<>();
  private double[] up = {0, 0, 1};

  /** Rests for a second. */
  TurnedUnit rest() {
    for (int i = 0; i < STEPS; i++) {
      add(new double[3]);
    }
    return this;
  }

  /** Turns by so much about an axis, at an even rate, and rests. */
  TurnedUnit turn(double deg, double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    double[] axis = {x / length, y / length, z / length};
    double step = Math.toRadians(deg) / STEPS;
    for (int i = 0; i < STEPS; i++) {
      // the trapezoid between samples is exact where the rate begins and ends at half its size
      add(times(axis, (i == 0 ? 0.5 : 1) * step * RATE_HZ));
      up = turned(up, axis, -step);
    }
    add(times(axis, 0.5 * step * RATE_HZ));
    return rest();
  }

  private static double[] times(double[] v, double factor) {
    return new double[] {v[0] * factor, v[1] * factor, v[2] * factor};
  }

  /** What lies along the axis stays, what lies across goes round in a circle. */
  private static double[] turned(double[] v, double[] axis, double angle) {
    double along = v[0] * axis[0] + v[1] * axis[1] + v[2] * axis[2];
    double[] out = new double[3];
    for (int k = 0; k < 3; k++) {
      int l = (k + 1) % 3;
      int m = (k + 2) % 3;
      double across = v[k] - along * axis[k];
      double square = axis[l] * v[m] - axis[m] * v[l];
      out[k] = along * axis[k] + across * Math.cos(angle) + square * Math.sin(angle);
    }
    return out;
  }

  private void add(double[] rate) {
    accel.add(times(up, 9.80665));
    gyro.add(rate);
  }

  /** There and back about several axes, each by 60 deg: eight turns a round. */
  static TurnedUnit wellTurned() {
    TurnedUnit unit = new TurnedUnit().rest();
    double[][] axes = {{1, 0, 0}, {0, 1, 0}, {1, 1, 1}, {-1, 2, 1}};
    for (double[] axis : axes) {
      unit.turn(60, axis[0], axis[1], axis[2]).turn(-60, axis[0], axis[1], axis[2]);
    }
    return unit;
  }

  /**
   * The stream, each axis of the gyroscope under another reading.
   *
   * @param order which axis stands in the place of each
   * @param factors of each
   */
  UnitStream stream(int[] order, double... factors) {
    int n = accel.size();
    double[] timeS = new double[n];
    Arrays.setAll(timeS, i -> i / RATE_HZ);
    double[][] force = new double[3][n];
    double[][] rate = new double[3][n];
    for (int i = 0; i < n; i++) {
      for (int axis = 0; axis < 3; axis++) {
        force[axis][i] = accel.get(i)[axis];
        rate[axis][i] = gyro.get(i)[order[axis]] * factors[axis];
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_HAND, RATE_HZ), timeS, force, rate);
  }

  /** The stream with the signs or scales of the gyroscope's axes changed. */
  UnitStream stream(double... factors) {
    return stream(new int[] {0, 1, 2}, factors);
  }
}
