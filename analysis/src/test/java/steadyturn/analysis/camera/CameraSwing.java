package steadyturn.analysis.camera;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * A real swing that cameras saw (resource README), at 1000 Hz, with its true key positions by the
 * definitions of docs/measures.md. Columns by millisecond: m, ground frame; quaternions w, x, y, z.
 *
 * @param takeaway millisecond of the takeaway; so are top and impact, the arm's nearest return
 */
record CameraSwing(
    double[][] hipM,
    double[][] qPelvis,
    double[][] wristM,
    double[][] qForearm,
    int takeaway,
    int top,
    int impact) {

  private static final double FRAMES_HZ = 120;
  private static final double SLOW_RAD_PER_S = Math.toRadians(8);

  static CameraSwing read(String name) {
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(CameraSwing.class.getResourceAsStream(name)),
                StandardCharsets.UTF_8))) {
      List<double[]> rows =
          lines
              .lines()
              .skip(1)
              .map(l -> Arrays.stream(l.split("\t")).mapToDouble(Double::parseDouble))
              .map(s -> s.toArray())
              .toList();
      return of(rows);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CameraSwing of(List<double[]> rows) {
    int n = (int) ((rows.size() - 1) / FRAMES_HZ * 1000);
    double[][] hip = columns(rows, 0, 3, n);
    double[][] pelvis = unit(columns(rows, 3, 4, n));
    double[][] wrist = columns(rows, 7, 3, n);
    double[][] forearm = unit(columns(rows, 10, 4, n));
    double[][] sweep = sweep(forearm);
    double[] still = Turn.apply(forearm[300], new double[] {1, 0, 0});
    int down = lowest(forearm);
    int impact = down;
    double nearest = -1;
    for (int i = down - 250; i < down + 120; i++) {
      double near = dot(Turn.apply(forearm[i], new double[] {1, 0, 0}), still);
      impact = near > nearest ? i : impact;
      nearest = Math.max(near, nearest);
    }
    double[] normal = sum(sweep, impact - 200, impact);
    int top = impact;
    for (int round = 0; round < 3; round++) {
      top = impact - 30;
      while (dot(sweep[top], normal) > 0) {
        top--;
      }
      normal = sum(sweep, top, impact);
    }
    double size = Math.sqrt(dot(normal, normal));
    double left = 0;
    for (int i = 0; i < top; i++) {
      left += Math.max(0, -dot(sweep[i], normal)) / 2;
    }
    int takeaway = top;
    while (left > 0) {
      left += dot(sweep[--takeaway], normal);
    }
    while (-dot(sweep[takeaway], normal) / size > SLOW_RAD_PER_S) {
      takeaway--;
    }
    return new CameraSwing(hip, pelvis, wrist, forearm, takeaway, top, impact);
  }

  private static double[][] columns(List<double[]> rows, int from, int count, int n) {
    double[] timeS = new double[rows.size()];
    double[] value = new double[rows.size()];
    double[][] out = new double[n][count];
    for (int c = 0; c < count; c++) {
      for (int i = 0; i < rows.size(); i++) {
        timeS[i] = i / FRAMES_HZ;
        value[i] = rows.get(i)[from + c];
      }
      PolynomialSplineFunction spline = new SplineInterpolator().interpolate(timeS, value);
      for (int i = 0; i < n; i++) {
        out[i][c] = spline.value(i * 1e-3);
      }
    }
    return out;
  }

  private static double[][] unit(double[][] q) {
    for (int i = 0; i < q.length; i++) {
      q[i] = Turn.unit(q[i]);
    }
    return q;
  }

  /** How the bone turns in the ground, its roll left out, rad/s. */
  private static double[][] sweep(double[][] q) {
    double[][] out = new double[q.length][3];
    for (int i = 1; i < q.length; i++) {
      double[] step = Turn.vector(Turn.times(Turn.back(q[i - 1]), q[i]));
      out[i] = Turn.apply(q[i], new double[] {0, 1000 * step[1], 1000 * step[2]});
    }
    return out;
  }

  /** When the arm hangs lowest in the second half. */
  private static int lowest(double[][] qForearm) {
    int best = qForearm.length / 2;
    for (int i = best; i < qForearm.length - 200; i++) {
      best = down(qForearm[i]) < down(qForearm[best]) ? i : best;
    }
    return best;
  }

  private static double down(double[] q) {
    return Turn.apply(q, new double[] {1, 0, 0})[2];
  }

  private static double[] sum(double[][] of, int from, int to) {
    double[] sum = new double[3];
    for (int i = from; i < to; i++) {
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += of[i][axis];
      }
    }
    return sum;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
