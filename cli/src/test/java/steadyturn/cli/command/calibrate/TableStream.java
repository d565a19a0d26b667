package steadyturn.cli.command.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A unit with known errors on a table: rests, turns about its axes, faces, laid end to end. */
final class TableStream {

  static final String SERIAL = "T-77";
  static final double[] GYRO_BIAS = {0.015, -0.02, 0.01};
  static final double[] ACCEL_BIAS = {0.25, -0.18, 0.11};
  static final double[][] GYRO_ERRORS = {
    {0.994, 0.003, -0.002}, {0.004, 1.007, 0.005}, {-0.001, -0.006, 1.002}
  };
  static final double[][] ACCEL_ERRORS = {
    {1.005, 0.004, -0.003}, {-0.006, 0.997, 0.002}, {0.003, 0.005, 1.004}
  };

  private static final double RATE_HZ = 200;
  private static final double G = 9.80665;

  private final Random random;
  private final List<double[]> samples = new ArrayList<>();
  private double[] force = {0, 0, G};

  TableStream(long seed) {
    random = new Random(seed);
  }

  /** Lies as it lies. */
  TableStream lie(double seconds) {
    return add(seconds, force, new double[3], 0.001);
  }

  /** Turns about one of its axes within 1 s, lying on the face that this axis goes through. */
  TableStream turn(int axis, double deg) {
    double[] rate = new double[3];
    rate[axis] = Math.toRadians(deg);
    return add(1, force, rate, 0.001);
  }

  /** A hand takes it. */
  TableStream pickUp() {
    return add(0.8, new double[] {2, 3, 9}, new double[3], 0.1);
  }

  /** Lies on a face, named by the axis that points up, some degrees crooked. */
  TableStream lieOn(String up, double tiltDeg, double seconds) {
    int axis = "xyz".indexOf(up.charAt(1));
    force = new double[3];
    force[axis] = (up.charAt(0) == '-' ? -G : G) * Math.cos(Math.toRadians(tiltDeg));
    force[(axis + 1) % 3] = G * Math.sin(Math.toRadians(tiltDeg));
    return lie(seconds);
  }

  private TableStream add(double seconds, double[] trueForce, double[] trueRate, double noise) {
    for (int i = 0; i < Math.round(seconds * RATE_HZ); i++) {
      double[] row = new double[6];
      for (int axis = 0; axis < 3; axis++) {
        row[axis] = shown(ACCEL_ERRORS[axis], trueForce, ACCEL_BIAS[axis], 10 * noise);
        row[3 + axis] = shown(GYRO_ERRORS[axis], trueRate, GYRO_BIAS[axis], noise);
      }
      samples.add(row);
    }
    return this;
  }

  private double shown(double[] errors, double[] truth, double bias, double noise) {
    double sum = bias + noise * random.nextGaussian();
    for (int k = 0; k < 3; k++) {
      sum += errors[k] * truth[k];
    }
    return sum;
  }

  UnitStream stream() {
    int n = samples.size();
    double[] timeS = new double[n];
    double[][] columns = new double[6][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i / RATE_HZ;
      for (int c = 0; c < 6; c++) {
        columns[c][i] = samples.get(i)[c];
      }
    }
    UnitFacts facts =
        new UnitFacts(BodyPoint.PELVIS, SERIAL, RATE_HZ, 16 * 9.80665, Math.toRadians(2000), false);
    return new UnitStream(
        facts,
        timeS,
        new double[][] {columns[0], columns[1], columns[2]},
        new double[][] {columns[3], columns[4], columns[5]});
  }
}
