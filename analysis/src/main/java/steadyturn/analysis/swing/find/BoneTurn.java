package steadyturn.analysis.swing.find;

import java.util.Arrays;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;

/**
 * How the bone under a unit turns: across its own length in the track frame, and about it. Fast
 * turns about the bone, as of a forearm that rolls over after impact, say nothing of a swing.
 */
final class BoneTurn {

  private final GyroTrack track;

  /** Columns x, y, z, track frame. */
  private final double[][] bone;

  private final double[][] across;
  private final double[] rollRadPerS;

  BoneTurn(GyroTrack track, Vector3 longAxisUnit) {
    this.track = track;
    int n = track.size();
    bone = new double[3][n];
    across = new double[3][n];
    rollRadPerS = new double[n];
    for (int i = 0; i < n; i++) {
      rollRadPerS[i] = track.rateUnitRadPerS(i).dot(longAxisUnit);
    }
    for (int axis = 0; axis < 3; axis++) {
      double part = longAxisUnit.get(axis);
      Arrays.fill(bone[axis], part);
      for (int i = 0; i < n; i++) {
        across[axis][i] = track.rateUnitRadPerS(axis, i) - part * rollRadPerS[i];
      }
    }
    track.toTrack(bone);
    track.toTrack(across);
  }

  private Vector3 across(int i) {
    return new Vector3(across[0][i], across[1][i], across[2][i]);
  }

  private static double along(double[][] columns, Vector3 axis, int i) {
    return columns[0][i] * axis.x() + columns[1][i] * axis.y() + columns[2][i] * axis.z();
  }

  /** Sample of the fastest turn across the bone in a span. */
  int fastest(double fromS, double toS) {
    int from = Math.min(track.size() - 1, track.indexAt(fromS));
    int best = from;
    for (int i = from; i < track.size() && track.timeS(i) <= toS; i++) {
      best = across(i).norm() > across(best).norm() ? i : best;
    }
    return best;
  }

  /** Mean axis of samples from..to, each weighted by its rate. */
  Vector3 axis(int from, int to) {
    Vector3 sum = Vector3.ZERO;
    for (int i = from; i <= to; i++) {
      sum = sum.plus(across(i).times(across(i).norm()));
    }
    return sum.norm() > 0 ? sum.unit() : Vector3.Z;
  }

  /** Rate of the bone around an axis, rad/s: about the part of the axis that is square to it. */
  double[] ratesAbout(Vector3 axis) {
    return ratesAbout(axis, 0, track.size());
  }

  /** The same of samples from..to-1. */
  double[] ratesAbout(Vector3 axis, int from, int to) {
    double[] rates = new double[to - from];
    for (int i = from; i < to; i++) {
      rates[i - from] = along(across, axis, i) / squareTo(axis, i);
    }
    return rates;
  }

  private double squareTo(Vector3 axis, int i) {
    double along = along(bone, axis, i);
    return Math.sqrt(Math.max(0.25, 1 - along * along));
  }

  /** What else the bone does at a sample: its turn across, square to an axis, rad/s. */
  double astrayRadPerS(Vector3 axis, int i) {
    double in = along(across, axis, i) / squareTo(axis, i);
    double all = across(i).norm();
    return Math.sqrt(Math.max(0, all * all - in * in));
  }

  double rollRadPerS(int i) {
    return rollRadPerS[i];
  }
}
