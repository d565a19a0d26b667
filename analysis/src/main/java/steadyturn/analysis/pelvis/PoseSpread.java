package steadyturn.analysis.pelvis;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/**
 * The pose at one instant with the columns of its independent errors, skin and event time included.
 */
final class PoseSpread {

  private final PelvisPose pose;

  /** {@link PelvisPose#SIZE} rows, a column a source. */
  private final double[][] columns;

  private PoseSpread(PelvisPose pose, double[][] columns) {
    this.pose = pose;
    this.columns = columns;
  }

  /** At an instant known to a spread: the nearest sample's pose, carried on at its rate. */
  static PoseSpread at(PelvisTrack track, double timeS, double timeSdS, SkinCourse skin) {
    int k = track.nearest(timeS);
    double[] rate = track.poseRate(k);
    double[] pose = track.pose(k).toArray();
    double[][] columns = track.errorColumns(k, skin.at(track.timeS(k), track.largestTurnRad(k)));
    int n = columns[0].length;
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      pose[row] += rate[row] * (timeS - track.timeS(k));
      columns[row] = Arrays.copyOf(columns[row], n + 1);
      columns[row][n] = rate[row] * timeSdS;
    }
    return new PoseSpread(PelvisPose.of(pose), columns);
  }

  /** At a sample. */
  static PoseSpread at(PelvisTrack track, int k, SkinCourse skin) {
    return new PoseSpread(
        track.pose(k), track.errorColumns(k, skin.at(track.timeS(k), track.largestTurnRad(k))));
  }

  /** A pose with given error columns: {@link PelvisPose#SIZE} rows, a column a source. */
  static PoseSpread of(PelvisPose pose, double[][] columns) {
    return new PoseSpread(pose, columns);
  }

  PelvisPose pose() {
    return pose;
  }

  double sd(int component) {
    return Math.sqrt(covariance(component, component));
  }

  double covariance(int component, int other) {
    double sum = 0;
    for (int c = 0; c < columns[component].length; c++) {
      sum += columns[component][c] * columns[other][c];
    }
    return sum;
  }

  /** Spread of a function of the pose: its gradient by central differences, times the columns. */
  double sd(ToDoubleFunction<PelvisPose> function) {
    double[] base = pose.toArray();
    double[] gradient = new double[PelvisPose.SIZE];
    for (int i = 0; i < PelvisPose.SIZE; i++) {
      double step = 1e-5;
      double[] plus = base.clone();
      double[] minus = base.clone();
      plus[i] += step;
      minus[i] -= step;
      gradient[i] =
          (function.applyAsDouble(PelvisPose.of(plus))
                  - function.applyAsDouble(PelvisPose.of(minus)))
              / (2 * step);
    }
    double sum = 0;
    for (int c = 0; c < columns[0].length; c++) {
      double moved = 0;
      for (int i = 0; i < PelvisPose.SIZE; i++) {
        moved += gradient[i] * columns[i][c];
      }
      sum += moved * moved;
    }
    return Math.sqrt(sum);
  }
}
