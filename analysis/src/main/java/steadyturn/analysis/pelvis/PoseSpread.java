package steadyturn.analysis.pelvis;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import steadyturn.fusion.strapdown.Bridge;

/**
 * The pose at one instant with the columns of its independent errors, skin and event time included.
 */
@SuppressWarnings("ArrayRecordComponent") // of its own making
record PoseSpread(PelvisPose pose, double[][] columns) {

  /** A unit that springs on skin shows a turn early or late by this (our assumption), s. */
  private static final double SKIN_LAG_SD_S = 0.0025;

  /** A pose goes straight for so long, s (our choice: 3000 deg/s^2 bend it by 0.15 deg). */
  private static final double STRAIGHT_S = 0.01;

  /**
   * At an instant known to a spread: the nearest sample's pose, carried on at its rate. Inside a
   * gap the pose goes from one end to the other with the rates of both, and all that the gap may
   * have cost by its end is taken for possible already.
   */
  static PoseSpread at(PelvisTrack track, double timeS, double timeSdS, SkinCourse skin) {
    int k = track.nearest(timeS);
    double[] rate = track.poseRate(k);
    double[] pose = track.pose(k).toArray();
    SkinShift shift = skin.at(track.timeS(k), track.largestTurnRad(k));
    Optional<Bridge> gap = track.gapAt(timeS);
    if (gap.isPresent()) {
      shift = shift.and(gap.get().rotationSdRad(), gap.get().placeSdM());
    }
    if (gap.filter(g -> g.rotationSdRad() > 0).isPresent()) {
      pose = between(track, track.indexAt(timeS), timeS);
    } else {
      for (int row = 0; row < PelvisPose.SIZE; row++) {
        pose[row] += rate[row] * (timeS - track.timeS(k));
      }
    }
    double[][] columns = track.errors().columns(k, shift);
    int n = columns[0].length;
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      columns[row] = Arrays.copyOf(columns[row], n + 2);
      columns[row][n] = rate[row] * Math.hypot(timeSdS, SKIN_LAG_SD_S);
    }
    if (timeSdS > STRAIGHT_S) {
      bent(track, timeS, timeSdS, columns);
    }
    return new PoseSpread(PelvisPose.of(pose), columns);
  }

  /**
   * Where the instant is so little known that the pose does not go straight meanwhile, as where it
   * turns round: half of what it differs by one spread before and after, and how far the middle of
   * the two lies from it, of which an error of normal spread makes sqrt(3) in the root mean square.
   */
  private static void bent(PelvisTrack track, double timeS, double sdS, double[][] columns) {
    double[] here = track.pose(track.nearest(timeS)).toArray();
    double[] before = track.pose(track.nearest(timeS - sdS)).toArray();
    double[] after = track.pose(track.nearest(timeS + sdS)).toArray();
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      double there = row == 0 ? PoseMath.wrap(after[row] - here[row]) : after[row] - here[row];
      double back = row == 0 ? PoseMath.wrap(before[row] - here[row]) : before[row] - here[row];
      int n = columns[row].length;
      columns[row][n - 2] = (there - back) / 2;
      columns[row][n - 1] = Math.sqrt(3) * (there + back) / 2;
    }
  }

  /** The cubic that leaves the sample before and meets the one after with their own rates. */
  private static double[] between(PelvisTrack track, int after, double timeS) {
    int before = Math.max(0, after - 1);
    double span = track.timeS(after) - track.timeS(before);
    double u = span > 0 ? (timeS - track.timeS(before)) / span : 0;
    double v = 1 - u;
    double[] a = track.pose(before).toArray();
    double[] b = track.pose(after).toArray();
    double[] rateA = track.poseRate(before);
    double[] rateB = track.poseRate(after);
    double[] out = new double[PelvisPose.SIZE];
    for (int i = 0; i < out.length; i++) {
      double end = i == 0 ? a[0] + PoseMath.wrap(b[0] - a[0]) : b[i];
      out[i] =
          a[i] * v * v * (1 + 2 * u)
              + end * u * u * (1 + 2 * v)
              + span * u * v * (rateA[i] * v - rateB[i] * u);
    }
    return out;
  }

  /** At a sample. */
  static PoseSpread at(PelvisTrack track, int k, SkinCourse skin) {
    return new PoseSpread(
        track.pose(k), track.errors().columns(k, skin.at(track.timeS(k), track.largestTurnRad(k))));
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
