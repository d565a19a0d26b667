package steadyturn.fusion.strapdown;

import java.util.Arrays;
import java.util.List;

/**
 * The derivatives of a pass by its parameters: rotation in the level frame, velocity and place, by
 * first attitude and velocity, the unit's errors and the jumps. What the attitude, the velocity and
 * the jumps do follows in closed form from the pass; the unit's errors are carried along it in
 * blocks of at most 8 ms: over such a block a body turns by 0.1 rad at most and the error of the
 * trapezoid stays below a thousandth. Kept at the samples asked for; between those, lines.
 */
public final class Sensitivities {

  /** Rows of a sample's derivatives: rotation, velocity, place. */
  public static final int ROWS = 9;

  private static final double BLOCK_S = 0.008;

  /** Columns of the unit's errors that turn (gyro bias, gyro matrix), and all of them. */
  private static final int TURNING = 12;

  private static final int CARRIED = 18;

  /** Parameter of each carried column. */
  private static final int[] PARAMETER = {
    6, 7, 8, 12, 13, 14, 15, 16, 17, 18, 19, 20, 9, 10, 11, 21, 22, 23
  };

  private final Strapdown pass;
  private final int[] kept;
  private final double[][] at;

  private final double[] rotation = new double[3 * TURNING];
  private final double[] velocity = new double[3 * CARRIED];
  private final double[] place = new double[3 * CARRIED];
  private final double[] rotationBefore = new double[3 * TURNING];
  private final double[] velocityBefore = new double[3 * CARRIED];
  private double[] axes = new double[9];
  private double[] axesBefore = new double[9];
  private final double[] turned = new double[3];
  private final double[] pushed = new double[3];

  private Sensitivities(Strapdown pass, int[] kept) {
    this.pass = pass;
    this.kept = kept;
    this.at = new double[kept.length][];
    carryAll();
  }

  /** Kept at certain samples. */
  public static Sensitivities at(Strapdown pass, int[] samples) {
    return new Sensitivities(pass, Arrays.stream(samples).sorted().distinct().toArray());
  }

  /** Kept every few milliseconds, for the derivatives of any sample. */
  public static Sensitivities everywhere(Strapdown pass) {
    int[] blocks = new int[pass.size()];
    int n = 0;
    for (int k = 0; k < pass.size(); k++) {
      boolean isEnd =
          n == 0
              || k == pass.size() - 1
              || pass.timeS(k + 1) - pass.timeS(blocks[n - 1]) > BLOCK_S + 1e-9;
      if (isEnd) {
        blocks[n++] = k;
      }
    }
    return new Sensitivities(pass, Arrays.copyOf(blocks, n));
  }

  private void carryAll() {
    pass.attitudes.matrix(0, axes);
    int next = 0;
    int from = 0;
    for (int k = 0; k < pass.size() && next < kept.length; k++) {
      boolean isWanted = kept[next] == k;
      boolean isFull = k + 1 < pass.size() && pass.timeS(k + 1) - pass.timeS(from) > BLOCK_S + 1e-9;
      if (k > from && (isWanted || isFull)) {
        carry(from, k);
        from = k;
      }
      if (isWanted) {
        at[next++] = together();
      }
    }
  }

  /** The integrals of measured rate and force over a block. */
  private void gather(int from, int to) {
    StrapdownSamples s = pass.samples;
    double lengthS = s.timeS[to] - s.timeS[from];
    for (int axis = 0; axis < 3; axis++) {
      turned[axis] =
          integral(s.timeS, s.gyroRadPerS[axis], from, to)
              - lengthS * pass.state.gyroBiasRadPerS().get(axis);
      double push = integral(s.timeS, s.accelMps2[axis], from, to);
      pushed[axis] =
          (Double.isNaN(push) ? bridgedPush(axis, from, to) : push)
              - lengthS * pass.state.accelBiasMps2().get(axis);
    }
  }

  private static double integral(double[] timeS, double[] column, int from, int to) {
    double sum = 0;
    for (int k = from + 1; k <= to; k++) {
      sum += (timeS[k] - timeS[k - 1]) * (column[k - 1] + column[k]);
    }
    return sum / 2;
  }

  /** Where the force is lost its last value stands in: a scale error is small. */
  private double bridgedPush(int axis, int from, int to) {
    StrapdownSamples s = pass.samples;
    int last = from;
    while (last > 0 && !s.hasForce(last)) {
      last--;
    }
    double push = 0;
    for (int k = from + 1; k <= to; k++) {
      last = s.hasForce(k) ? k : last;
      double shown = s.hasForce(last) ? s.accelMps2[axis][last] : 0;
      double before = s.hasForce(k - 1) ? s.accelMps2[axis][k - 1] : shown;
      push += (s.timeS[k] - s.timeS[k - 1]) * (before + shown) / 2;
    }
    return push;
  }

  private void carry(int from, int to) {
    double[] spare = axesBefore;
    axesBefore = axes;
    axes = spare;
    pass.attitudes.matrix(to, axes);
    gather(from, to);
    double dt = pass.timeS(to) - pass.timeS(from);
    System.arraycopy(rotation, 0, rotationBefore, 0, rotation.length);
    System.arraycopy(velocity, 0, velocityBefore, 0, velocity.length);
    for (int row = 0; row < 3; row++) {
      for (int axis = 0; axis < 3; axis++) {
        double mean = (axesBefore[3 * row + axis] + axes[3 * row + axis]) / 2;
        rotation[row * TURNING + axis] -= mean * dt;
        for (int by = 0; by < 3; by++) {
          rotation[row * TURNING + 3 + 3 * axis + by] += mean * turned[by];
        }
        velocity[row * CARRIED + TURNING + axis] -= mean * dt;
        velocity[row * CARRIED + TURNING + 3 + axis] += mean * pushed[axis];
      }
    }
    turnForces(from, to);
    for (int c = 0; c < place.length; c++) {
      place[c] += dt * (velocityBefore[c] + velocity[c]) / 2;
    }
  }

  /** A turned unit takes the force for one that is turned: rotation x impulse of the block. */
  private void turnForces(int from, int to) {
    double fx = pass.impulse[0][to] - pass.impulse[0][from];
    double fy = pass.impulse[1][to] - pass.impulse[1][from];
    double fz = pass.impulse[2][to] - pass.impulse[2][from];
    for (int c = 0; c < TURNING; c++) {
      double rx = (rotationBefore[c] + rotation[c]) / 2;
      double ry = (rotationBefore[TURNING + c] + rotation[TURNING + c]) / 2;
      double rz = (rotationBefore[2 * TURNING + c] + rotation[2 * TURNING + c]) / 2;
      velocity[c] += ry * fz - rz * fy;
      velocity[CARRIED + c] += rz * fx - rx * fz;
      velocity[2 * CARRIED + c] += rx * fy - ry * fx;
    }
  }

  private double[] together() {
    double[] out = new double[ROWS * CARRIED];
    for (int row = 0; row < 3; row++) {
      System.arraycopy(rotation, row * TURNING, out, row * CARRIED, TURNING);
    }
    System.arraycopy(velocity, 0, out, 3 * CARRIED, velocity.length);
    System.arraycopy(place, 0, out, 6 * CARRIED, place.length);
    return out;
  }

  /** All derivatives of a sample: {@link #ROWS} rows of one column a parameter. */
  public double[][] of(int k) {
    double[][] out = new double[ROWS][pass.state.size()];
    int next = Arrays.binarySearch(kept, k);
    int after = next >= 0 ? next : -next - 1;
    int before = next >= 0 ? next : after - 1;
    double whole = pass.timeS(kept[after]) - pass.timeS(kept[before]);
    double part = after == before ? 0 : (pass.timeS(k) - pass.timeS(kept[before])) / whole;
    for (int row = 0; row < ROWS; row++) {
      for (int c = 0; c < CARRIED; c++) {
        int i = row * CARRIED + c;
        out[row][PARAMETER[c]] = at[before][i] + part * (at[after][i] - at[before][i]);
      }
    }
    start(k, out);
    List<Bridge> bridges = pass.samples.bridges();
    for (int b = 0; b < bridges.size() && bridges.get(b).after() <= k; b++) {
      jump(k, b, bridges.get(b).after(), out);
    }
    return out;
  }

  private void start(int k, double[][] out) {
    double sinceS = pass.timeS(k) - pass.timeS(0);
    for (int axis = 0; axis < 3; axis++) {
      out[axis][UnitState.ATTITUDE + axis] = 1;
      out[3 + axis][UnitState.VELOCITY + axis] = 1;
      out[6 + axis][UnitState.VELOCITY + axis] = sinceS;
      turn(out, 3, UnitState.ATTITUDE + axis, axis, at(pass.impulse, k));
      turn(out, 6, UnitState.ATTITUDE + axis, axis, at(pass.path, k));
    }
  }

  /** A jump acts as a first attitude, velocity and place do, from its own sample on. */
  private void jump(int k, int bridge, int from, double[][] out) {
    int column = UnitState.SIZE + Bridge.SIZE * bridge;
    double behindS = pass.timeS(k) - pass.timeS(from);
    int before = Math.max(0, from - 1);
    while (before > 0 && !pass.samples.hasForce(before)) {
      before--;
    }
    double lengthS = pass.timeS(from) - pass.timeS(before);
    double[] impulse = new double[3];
    double[] path = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      // the end of the line over the gap turns with what lies behind it
      double half = lengthS * pass.endMps2(axis, from, 1, lengthS) / 2;
      impulse[axis] = pass.impulse[axis][k] - pass.impulse[axis][from] + half;
      path[axis] =
          pass.path[axis][k]
              - pass.path[axis][from]
              - behindS * (pass.impulse[axis][from] - half)
              + lengthS * half / 3;
    }
    for (int axis = 0; axis < 3; axis++) {
      out[axis][column + axis] = 1;
      turn(out, 3, column + axis, axis, impulse);
      turn(out, 6, column + axis, axis, path);
      out[3 + axis][column + 3 + axis] = 1;
      out[6 + axis][column + 3 + axis] = behindS;
      out[6 + axis][column + 6 + axis] = 1;
    }
  }

  /** Writes (unit vector of the axis) x v into three rows of a column. */
  private static void turn(double[][] out, int row, int column, int axis, double[] v) {
    int second = (axis + 1) % 3;
    int third = (axis + 2) % 3;
    out[row + second][column] = -v[third];
    out[row + third][column] = v[second];
  }

  private static double[] at(double[][] columns, int k) {
    return new double[] {columns[0][k], columns[1][k], columns[2][k]};
  }
}
