package steadyturn.analysis.marker;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.pelvis.LeverArm;
import steadyturn.ingest.marker.MarkerTracks;

/**
 * The pelvis of four markers over its bony points: front (ASIS) right and left, back (PSIS) right
 * and left. Axes as ours: y along the front points to the left, x forward in the plane of all four,
 * z up. Mid-hip by the same regression as ours (Harrington et al. 2007, J Biomech 40:595-602), its
 * sizes taken between the markers.
 */
@SuppressWarnings("ArrayRecordComponent") // long columns
public record PelvisMarkers(double[] timeS, double[] azimuthRad, double[][] midHipM) {

  /** Gaps up to this long are bridged by a straight line, s. */
  private static final double LONGEST_GAP_S = 0.05;

  /** Which axis of the laboratory points up. */
  public enum Up {
    Y,
    Z
  }

  /** What stops markers from being a pelvis. */
  public static final class MarkerException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    MarkerException(String message) {
      super(message);
    }
  }

  /**
   * The pelvis of some markers.
   *
   * @param names right front, left front, right back, left back
   */
  public static PelvisMarkers of(MarkerTracks tracks, List<String> names, Up up) {
    double[][][] points = new double[4][][];
    for (int i = 0; i < 4; i++) {
      points[i] = tracks.of(names.get(i));
      if (points[i].length == 0) {
        throw new MarkerException(
            "there is no marker \""
                + names.get(i)
                + "\"; there are "
                + String.join(", ", tracks.names())
                + "; name four by --markers");
      }
    }
    int n = tracks.timeS().length;
    double[] azimuth = new double[n];
    double[][] midHip = new double[3][n];
    double[] sizes = sizesM(points, n);
    double behindM = LeverArm.hipBehindFrontMm(1000 * sizes[1]) / 1000;
    double belowM = LeverArm.hipBelowFrontMm(1000 * sizes[0]) / 1000;
    for (int i = 0; i < n; i++) {
      Vector3 rightFront = place(points[0], i, up);
      Vector3 leftFront = place(points[1], i, up);
      Vector3 back = place(points[2], i, up).plus(place(points[3], i, up)).times(0.5);
      Vector3 front = rightFront.plus(leftFront).times(0.5);
      Vector3 left = leftFront.minus(rightFront).unit();
      Vector3 toFront = front.minus(back);
      Vector3 forward = toFront.minus(left.times(toFront.dot(left))).unit();
      Vector3 upwards = forward.cross(left);
      Vector3 middle = front.minus(forward.times(behindM)).minus(upwards.times(belowM));
      azimuth[i] = Math.atan2(left.y(), left.x());
      for (int axis = 0; axis < 3; axis++) {
        midHip[axis][i] = middle.get(axis);
      }
    }
    requireHips(midHip[2], up);
    return new PelvisMarkers(tracks.timeS(), unwrapped(azimuth), midHip);
  }

  private static Vector3 place(double[][] point, int i, Up up) {
    return up == Up.Z
        ? new Vector3(point[0][i], point[1][i], point[2][i])
        : new Vector3(point[0][i], -point[2][i], point[1][i]);
  }

  /** Means of width between the front points and depth from them to the back ones, m. */
  private static double[] sizesM(double[][][] points, int n) {
    double width = 0;
    double depth = 0;
    int seen = 0;
    for (int i = 0; i < n; i++) {
      Vector3 right = place(points[0], i, Up.Z);
      Vector3 left = place(points[1], i, Up.Z);
      Vector3 back = place(points[2], i, Up.Z).plus(place(points[3], i, Up.Z)).times(0.5);
      double one = left.minus(right).norm();
      double other = right.plus(left).times(0.5).minus(back).norm();
      if (!Double.isNaN(one + other)) {
        width += one;
        depth += other;
        seen++;
      }
    }
    if (seen == 0) {
      throw new MarkerException("in no frame are all four markers seen");
    }
    return new double[] {width / seen, depth / seen};
  }

  /** Hips that stand are 0.5 to 1.3 m above the floor; else the wrong axis points up. */
  private static void requireHips(double[] heightM, Up up) {
    double sum = 0;
    int seen = 0;
    for (double h : heightM) {
      if (!Double.isNaN(h)) {
        sum += h;
        seen++;
      }
    }
    double mean = sum / seen;
    if (!(mean > 0.5 && mean < 1.3)) {
      throw new MarkerException(
          String.format(
              Locale.ROOT,
              "the hips are %.2f m above the floor where %s points up; try --up %s",
              mean,
              up,
              up == Up.Z ? "y" : "z"));
    }
  }

  private static double[] unwrapped(double[] angleRad) {
    double[] out = angleRad.clone();
    double turns = 0;
    double last = Double.NaN;
    for (int i = 0; i < out.length; i++) {
      if (!Double.isNaN(angleRad[i])) {
        if (!Double.isNaN(last)) {
          turns -= 2 * Math.PI * Math.rint((angleRad[i] - last) / (2 * Math.PI));
        }
        last = angleRad[i];
        out[i] = angleRad[i] + turns;
      }
    }
    return out;
  }

  /** A column at an instant, by a straight line; NaN outside, and in gaps. */
  public double at(double[] column, double t) {
    if (!(t >= timeS[0] && t <= timeS[timeS.length - 1])) {
      return Double.NaN;
    }
    int found = Arrays.binarySearch(timeS, t);
    int behind = found >= 0 ? found : -found - 1;
    int before = found >= 0 ? found : behind - 1;
    while (before > 0 && Double.isNaN(column[before])) {
      before--;
    }
    while (behind < column.length - 1 && Double.isNaN(column[behind])) {
      behind++;
    }
    double step = timeS[behind] - timeS[before];
    if (step > LONGEST_GAP_S) {
      return Double.NaN;
    }
    double share = step == 0 ? 0 : (t - timeS[before]) / step;
    return column[before] + share * (column[behind] - column[before]);
  }

  /** The mean of a column over a stretch, NaN where nothing of it was seen. */
  public double mean(double[] column, double fromS, double untilS) {
    double sum = 0;
    int seen = 0;
    for (int i = 0; i < timeS.length; i++) {
      if (timeS[i] >= fromS && timeS[i] <= untilS && !Double.isNaN(column[i])) {
        sum += column[i];
        seen++;
      }
    }
    return seen == 0 ? at(column, (fromS + untilS) / 2) : sum / seen;
  }
}
