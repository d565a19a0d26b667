package steadyturn.ingest.sensor.kit;

import java.util.List;

/**
 * Follows the direction of gravity by the gyroscope for a second at a time (u' = u x w in the
 * unit's axes) and compares it with what the accelerometer then shows.
 */
final class GravityFollowed {

  private GravityFollowed() {}

  /** Mean error after a second, and mean angle by which gravity moved in it, degrees. */
  static double[] errorDeg(Heard heard) {
    List<double[]> samples = heard.samples;
    double error = 0;
    double moved = 0;
    int n = 0;
    int from = 0;
    for (int i = 1; i < samples.size(); i++) {
      if (samples.get(i)[0] - samples.get(from)[0] < 1) {
        continue;
      }
      double[] start = direction(samples, from);
      double[] followed = start.clone();
      for (int k = from + 1; k <= i; k++) {
        step(followed, samples.get(k), samples.get(k)[0] - samples.get(k - 1)[0]);
      }
      double[] end = direction(samples, i);
      error += angleDeg(followed, end);
      moved += angleDeg(start, end);
      n++;
      from = i;
    }
    return new double[] {error / n, moved / n};
  }

  /** Direction of the acceleration about sample i. */
  private static double[] direction(List<double[]> samples, int i) {
    double[] sum = new double[3];
    for (int k = Math.max(0, i - 2); k <= Math.min(samples.size() - 1, i + 2); k++) {
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += samples.get(k)[1 + axis];
      }
    }
    return sum;
  }

  private static void step(double[] u, double[] sample, double stepS) {
    double wx = sample[4] * stepS;
    double wy = sample[5] * stepS;
    double wz = sample[6] * stepS;
    double x = u[0] + u[1] * wz - u[2] * wy;
    double y = u[1] + u[2] * wx - u[0] * wz;
    double z = u[2] + u[0] * wy - u[1] * wx;
    double size = Math.sqrt((x * x + y * y + z * z) / (u[0] * u[0] + u[1] * u[1] + u[2] * u[2]));
    u[0] = x / size;
    u[1] = y / size;
    u[2] = z / size;
  }

  private static double angleDeg(double[] a, double[] b) {
    double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    double cx = a[1] * b[2] - a[2] * b[1];
    double cy = a[2] * b[0] - a[0] * b[2];
    double cz = a[0] * b[1] - a[1] * b[0];
    return Math.toDegrees(Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), dot));
  }
}
