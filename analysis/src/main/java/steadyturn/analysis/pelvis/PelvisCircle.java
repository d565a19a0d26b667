package steadyturn.analysis.pelvis;

import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

/** Radius of the smallest circle that holds mid-hip, seen from above, from takeaway to impact. */
final class PelvisCircle {

  private static final double STEP_S = 0.005;

  private PelvisCircle() {}

  static MeasureValue of(
      PelvisTrack track, double fromS, double toS, SkinShift skin, Grade grade, Reason caveat) {
    int n = Math.max(3, (int) Math.round((toS - fromS) / STEP_S) + 1);
    double[] x = new double[n];
    double[] y = new double[n];
    double[][][] columns = new double[n][][];
    for (int i = 0; i < n; i++) {
      int k = track.indexAt(fromS + (toS - fromS) * i / (n - 1));
      PelvisPose pose = track.pose(k);
      x[i] = pose.slideM();
      y[i] = pose.thrustM();
      columns[i] = i % 4 == 0 || i == n - 1 ? track.errors().placeColumns(k) : columns[i - 1];
    }
    double radiusM = SmallestCircle.radius(x, y);
    double variance = 0.5 * skin.placeM() * skin.placeM();
    for (int c = 0; c < columns[0][0].length; c++) {
      double change = moved(x, y, columns, c, 1) - moved(x, y, columns, c, -1);
      variance += change * change / 4;
    }
    double sdMm = 1e3 * Math.sqrt(variance);
    double valueMm = 1e3 * radiusM;
    return new MeasureValue(
        Measure.PELVIS_CIRCLE,
        "",
        valueMm,
        Math.max(0, valueMm - MeasureValue.Z95 * sdMm),
        valueMm + MeasureValue.Z95 * sdMm,
        grade,
        caveat);
  }

  private static double moved(double[] x, double[] y, double[][][] columns, int c, int sign) {
    double[] mx = new double[x.length];
    double[] my = new double[y.length];
    for (int i = 0; i < x.length; i++) {
      mx[i] = x[i] + sign * columns[i][0][c];
      my[i] = y[i] + sign * columns[i][1][c];
    }
    return SmallestCircle.radius(mx, my);
  }
}
