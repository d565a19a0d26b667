package steadyturn.analysis.swing.find;

import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * How the bone under a unit turns: across its own length in the track frame, and about it. Fast
 * turns about the bone, as of a forearm that rolls over after impact, say nothing of a swing.
 */
final class BoneTurn {

  private final GyroTrack track;
  private final Vector3[] bone;
  private final Vector3[] across;
  private final double[] rollRadPerS;

  BoneTurn(GyroTrack track, Vector3 longAxisUnit) {
    this.track = track;
    int n = track.size();
    bone = new Vector3[n];
    across = new Vector3[n];
    rollRadPerS = new double[n];
    for (int i = 0; i < n; i++) {
      Quaternion q = track.qTrackUnit(i);
      Vector3 rate = track.rateUnitRadPerS(i);
      rollRadPerS[i] = rate.dot(longAxisUnit);
      bone[i] = q.rotate(longAxisUnit);
      across[i] = q.rotate(rate.minus(longAxisUnit.times(rollRadPerS[i])));
    }
  }

  /** Sample of the fastest turn across the bone in a span. */
  int fastest(double fromS, double toS) {
    int from = Math.min(across.length - 1, track.indexAt(fromS));
    int best = from;
    for (int i = from; i < across.length && track.timeS(i) <= toS; i++) {
      best = across[i].norm() > across[best].norm() ? i : best;
    }
    return best;
  }

  /** Mean axis of samples from..to, each weighted by its rate. */
  Vector3 axis(int from, int to) {
    Vector3 sum = Vector3.ZERO;
    for (int i = from; i <= to; i++) {
      sum = sum.plus(across[i].times(across[i].norm()));
    }
    return sum.norm() > 0 ? sum.unit() : Vector3.Z;
  }

  /** Rate of the bone around an axis, rad/s: about the part of the axis that is square to it. */
  double[] ratesAbout(Vector3 axis) {
    double[] rates = new double[bone.length];
    for (int i = 0; i < rates.length; i++) {
      rates[i] = across[i].dot(axis) / squareTo(axis, i);
    }
    return rates;
  }

  private double squareTo(Vector3 axis, int i) {
    double along = bone[i].dot(axis);
    return Math.sqrt(Math.max(0.25, 1 - along * along));
  }

  /** What else the bone does at a sample: its turn across, square to an axis, rad/s. */
  double astrayRadPerS(Vector3 axis, int i) {
    double in = across[i].dot(axis) / squareTo(axis, i);
    double all = across[i].norm();
    return Math.sqrt(Math.max(0, all * all - in * in));
  }

  double rollRadPerS(int i) {
    return rollRadPerS[i];
  }
}
