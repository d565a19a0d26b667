package steadyturn.fusion.orientation;

import steadyturn.fusion.rotation.Quaternion;

/**
 * Error of a track against optical truth, degrees RMS over moving samples with truth. Error in the
 * earth frame e = q_est * conj(q_opt): inclination 2 acos sqrt(w^2 + z^2). "5 s": whole windows of
 * 5 s inside each stretch of movement, heading aligned at each window's first sample with truth,
 * all of the angle of e.
 */
public record OrientationScore(double inclinationDeg, double windowDeg) {

  private static final double WINDOW_S = 5;

  static OrientationScore of(OrientationTrack track, BroadTrial trial) {
    int n = track.size();
    Quaternion[] e = new Quaternion[n];
    double sum = 0;
    int count = 0;
    for (int i = 0; i < n; i++) {
      double[][] t = trial.truth();
      Quaternion optical = new Quaternion(t[0][i], t[1][i], t[2][i], t[3][i]);
      e[i] = track.qEarthUnit(i).times(optical.conjugate());
      if (trial.moving()[i] && !Double.isNaN(e[i].w())) {
        sum += square(inclinationRad(e[i]));
        count++;
      }
    }
    return new OrientationScore(
        Math.toDegrees(Math.sqrt(sum / count)), Math.toDegrees(windows(e, track, trial.moving())));
  }

  /** Part of the moving samples with truth whose inclination lies within 2.45 of its sigmas. */
  static double coverage(OrientationTrack track, BroadTrial trial) {
    double[][] t = trial.truth();
    int inside = 0;
    int count = 0;
    for (int i = 0; i < track.size(); i++) {
      if (trial.moving()[i] && !Double.isNaN(t[0][i])) {
        Quaternion optical = new Quaternion(t[0][i], t[1][i], t[2][i], t[3][i]);
        double error = inclinationRad(track.qEarthUnit(i).times(optical.conjugate()));
        inside += error < 2.45 * track.inclinationSigmaRad()[i] ? 1 : 0;
        count++;
      }
    }
    return (double) inside / count;
  }

  private static double windows(Quaternion[] e, OrientationTrack track, boolean[] moving) {
    double sum = 0;
    int count = 0;
    int start = 0;
    while (start < e.length) {
      int end = start;
      while (end < e.length
          && moving[end]
          && track.timeS()[end] < track.timeS()[start] + WINDOW_S - 1e-6) {
        end++;
      }
      boolean whole = end < e.length && moving[end];
      if (whole) {
        double heading = Double.NaN;
        for (int i = start; i < end; i++) {
          if (Double.isNaN(e[i].w())) {
            continue;
          }
          if (Double.isNaN(heading)) {
            heading = e[i].twistAboutZRad();
          }
          sum += square(Quaternion.aboutZ(-heading).times(e[i]).rotationVector().norm());
          count++;
        }
      }
      start = Math.max(end, start + 1);
    }
    return Math.sqrt(sum / count);
  }

  public static double inclinationRad(Quaternion e) {
    double cosHalf = Math.sqrt(e.w() * e.w() + e.z() * e.z()) / e.norm();
    return 2 * Math.acos(Math.min(1, cosHalf));
  }

  private static double square(double v) {
    return v * v;
  }
}
