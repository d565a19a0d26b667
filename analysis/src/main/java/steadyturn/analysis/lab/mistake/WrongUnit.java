package steadyturn.analysis.lab.mistake;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** One unit's stream with something wrong in it. */
final class WrongUnit {

  private WrongUnit() {}

  static UnitStream columns(UnitStream u, double[][] accel, double[][] gyro) {
    return new UnitStream(u.facts(), u.timeColumnS(), accel, gyro);
  }

  static double[][] accel(UnitStream u) {
    return new double[][] {u.accelColumnMps2(0), u.accelColumnMps2(1), u.accelColumnMps2(2)};
  }

  static double[][] gyro(UnitStream u) {
    return new double[][] {u.gyroColumnRadPerS(0), u.gyroColumnRadPerS(1), u.gyroColumnRadPerS(2)};
  }

  static double[] times(double[] column, double factor) {
    return Arrays.stream(column).map(v -> v * factor).toArray();
  }

  /** One axis of each sensor with another sign. */
  static UnitStream mapped(UnitStream u, int accelAxis, int accelSign, int gyroAxis, int gyroSign) {
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    accel[accelAxis] = times(accel[accelAxis], accelSign);
    gyro[gyroAxis] = times(gyro[gyroAxis], gyroSign);
    return columns(u, accel, gyro);
  }

  static UnitStream gyroExchanged(UnitStream u, int axis) {
    double[][] gyro = gyro(u);
    double[] kept = gyro[axis];
    gyro[axis] = gyro[(axis + 1) % 3];
    gyro[(axis + 1) % 3] = kept;
    return columns(u, accel(u), gyro);
  }

  static UnitStream scaled(UnitStream u, double ofAccel, double ofGyro) {
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = times(accel[axis], ofAccel);
      gyro[axis] = times(gyro[axis], ofGyro);
    }
    return columns(u, accel, gyro);
  }

  static UnitStream cut(UnitStream u, double atMps2, double atDegPerS) {
    double at = Math.toRadians(atDegPerS);
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] =
          Arrays.stream(accel[axis]).map(v -> Math.max(-atMps2, Math.min(atMps2, v))).toArray();
      gyro[axis] = Arrays.stream(gyro[axis]).map(v -> Math.max(-at, Math.min(at, v))).toArray();
    }
    return columns(u, accel, gyro);
  }

  /** Turns no faster than 0.6 of what its turns reached, where twice that is stated. */
  static UnitStream gyroCutAtHalf(UnitStream u) {
    double most = 0.6 * most(gyro(u));
    return cut(u, 1e9, Math.toDegrees(most))
        .withFacts(ranged(u.facts(), u.facts().accelFullScaleMps2(), 2 * most));
  }

  /** The same of its accelerometer. */
  static UnitStream accelCutAtHalf(UnitStream u) {
    double most = 0.6 * most(accel(u));
    return cut(u, most, 1e9)
        .withFacts(ranged(u.facts(), 2 * most, u.facts().gyroFullScaleRadPerS()));
  }

  private static UnitFacts ranged(UnitFacts f, double accel, double gyro) {
    return new UnitFacts(
        f.point(), f.serialNumber(), f.nominalRateHz(), accel, gyro, f.calibrated());
  }

  private static double most(double[][] columns) {
    return Arrays.stream(columns)
        .flatMapToDouble(Arrays::stream)
        .filter(v -> !Double.isNaN(v))
        .map(Math::abs)
        .max()
        .orElse(0);
  }

  /** Every 1/25 s one sample is kept; those between repeat it, or lie on the line to the next. */
  static UnitStream filled(UnitStream u, boolean byLines) {
    int every = (int) Math.max(2, Math.round(u.facts().nominalRateHz() / 25));
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = filled(accel[axis], every, byLines);
      gyro[axis] = filled(gyro[axis], every, byLines);
    }
    return columns(u, accel, gyro);
  }

  static double[] filled(double[] column, int every, boolean byLines) {
    double[] out = new double[column.length];
    for (int i = 0; i < out.length; i++) {
      int from = i - i % every;
      int to = Math.min(column.length - 1, from + every);
      double part = byLines && to > from ? (double) (i - from) / (to - from) : 0;
      out[i] = column[from] + part * (column[to] - column[from]);
    }
    return out;
  }

  static UnitStream times(UnitStream u, double factor) {
    return u.withTimes(times(u.timeColumnS(), factor));
  }

  /** What phones call linear acceleration: gravity taken out by a slow average. */
  static UnitStream withoutGravity(UnitStream u) {
    double[][] accel = accel(u);
    double keep = Math.exp(-1 / (0.5 * u.facts().nominalRateHz()));
    for (int axis = 0; axis < 3; axis++) {
      double[] out = new double[u.size()];
      double slow = u.size() == 0 ? 0 : accel[axis][0];
      for (int i = 0; i < out.length; i++) {
        double value = accel[axis][i];
        slow = Double.isNaN(value) ? slow : keep * slow + (1 - keep) * value;
        out[i] = value - slow;
      }
      accel[axis] = out;
    }
    return columns(u, accel, gyro(u));
  }

  /** One axis of the gyroscope gives the same value all the time. */
  static UnitStream stuck(UnitStream u, int axis) {
    double[][] gyro = gyro(u);
    double[] same = new double[u.size()];
    Arrays.fill(same, gyro[axis][u.size() / 2]);
    gyro[axis] = same;
    return columns(u, accel(u), gyro);
  }

  /** Axes of another sheet: x for y for z. */
  static UnitStream cycled(UnitStream u) {
    double[][] a = accel(u);
    double[][] g = gyro(u);
    return columns(u, new double[][] {a[1], a[2], a[0]}, new double[][] {g[1], g[2], g[0]});
  }

  /** Every 1/25 s one sample is kept; a natural cubic spline runs through them. */
  static UnitStream filledSmoothly(UnitStream u) {
    int every = (int) Math.max(2, Math.round(u.facts().nominalRateHz() / 25));
    double[][] accel = accel(u);
    double[][] gyro = gyro(u);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = filledSmoothly(accel[axis], every);
      gyro[axis] = filledSmoothly(gyro[axis], every);
    }
    return columns(u, accel, gyro);
  }

  static double[] filledSmoothly(double[] column, int every) {
    int[] kept = IntStream.iterate(0, i -> i < column.length, i -> i + every).toArray();
    int[] whole = Arrays.stream(kept).filter(i -> !Double.isNaN(column[i])).toArray();
    if (whole.length < 3) {
      return column;
    }
    PolynomialSplineFunction spline =
        new SplineInterpolator()
            .interpolate(
                Arrays.stream(whole).asDoubleStream().toArray(),
                Arrays.stream(whole).mapToDouble(i -> column[i]).toArray());
    return IntStream.range(0, column.length)
        .mapToDouble(i -> spline.isValidPoint(i) ? spline.value(i) : column[i])
        .toArray();
  }
}
