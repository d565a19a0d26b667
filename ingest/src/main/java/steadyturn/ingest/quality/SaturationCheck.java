package steadyturn.ingest.quality;

import java.util.function.IntFunction;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds values at the end of the range. The range is the stated one, unless flat tops show a
 * smaller one; where none is stated, a range shows itself by them: the largest value of an axis
 * coming three times in a row.
 */
final class SaturationCheck {

  /** From here on a value counts as the end of the range. */
  static final double SHARE_OF_FULL_SCALE = 0.999;

  /** Flat tops below these are no ends of a range: 2 g and 120 deg/s, under any common setting. */
  private static final double SMALLEST_ACCEL_MPS2 = 2 * StandardGravity.MPS2 * 0.98;

  private static final double SMALLEST_GYRO_RAD_PER_S = Math.toRadians(120);

  private static final int FLAT_SAMPLES = 3;

  /** A value held for longer is a stuck channel, not a flat top, s. */
  private static final double LONGEST_FLAT_S = 0.5;

  private SaturationCheck() {}

  static Saturation of(UnitStream unit, double rateHz) {
    double accel = unit.facts().accelFullScaleMps2();
    double gyro = unit.facts().gyroFullScaleRadPerS();
    int longestFlat = (int) Math.max(FLAT_SAMPLES, LONGEST_FLAT_S * rateHz);
    return count(
        unit,
        range(accel, columns(unit::accelColumnMps2), SMALLEST_ACCEL_MPS2, longestFlat),
        range(gyro, columns(unit::gyroColumnRadPerS), SMALLEST_GYRO_RAD_PER_S, longestFlat),
        rateHz);
  }

  private static double range(double stated, double[][] axes, double smallest, int longestFlat) {
    return Double.isInfinite(stated)
        ? inferred(axes, smallest, longestFlat)
        : CutBelow.of(stated, axes, smallest).orElse(stated);
  }

  private static Saturation count(UnitStream unit, double accel, double gyro, double rateHz) {
    double accelEnd = SHARE_OF_FULL_SCALE * accel;
    double gyroEnd = SHARE_OF_FULL_SCALE * gyro;
    Runs ofAccel = new Runs();
    Runs ofGyro = new Runs();
    int either = 0;
    for (int i = 0; i < unit.size(); i++) {
      boolean inAccel =
          ofAccel.next(
              reaches(unit.accelMps2(0, i), unit.accelMps2(1, i), unit.accelMps2(2, i), accelEnd));
      boolean inGyro =
          ofGyro.next(
              reaches(
                  unit.gyroRadPerS(0, i), unit.gyroRadPerS(1, i), unit.gyroRadPerS(2, i), gyroEnd));
      either += inAccel || inGyro ? 1 : 0;
    }
    double periodS = rateHz > 0 ? 1 / rateHz : 0;
    return new Saturation(
        either,
        ofAccel.total,
        ofGyro.total,
        ofAccel.longest * periodS,
        ofGyro.longest * periodS,
        accel,
        gyro);
  }

  private static boolean reaches(double x, double y, double z, double end) {
    return Math.abs(x) >= end || Math.abs(y) >= end || Math.abs(z) >= end;
  }

  private static double[][] columns(IntFunction<double[]> ofAxis) {
    return new double[][] {ofAxis.apply(0), ofAxis.apply(1), ofAxis.apply(2)};
  }

  /** The smallest flat top of the three axes and both signs; infinite when there is none. */
  private static double inferred(double[][] axes, double smallest, int longestFlat) {
    double found = Double.POSITIVE_INFINITY;
    for (double[] axis : axes) {
      for (int sign = -1; sign <= 1; sign += 2) {
        double top = largest(axis, sign);
        if (top >= smallest && isFlat(axis, sign, top, longestFlat)) {
          found = Math.min(found, top);
        }
      }
    }
    return found;
  }

  private static double largest(double[] axis, int sign) {
    double top = 0;
    for (double value : axis) {
      top = sign * value > top ? sign * value : top;
    }
    return top;
  }

  /** True when the top comes three times in a row somewhere, and nowhere for very long. */
  private static boolean isFlat(double[] axis, int sign, double top, int longestFlat) {
    double same = top * (1 - 2e-5); // half a step of 16 bits
    int longest = 0;
    int current = 0;
    for (double value : axis) {
      current = sign * value >= same ? current + 1 : 0;
      longest = Math.max(longest, current);
    }
    return longest >= FLAT_SAMPLES && longest <= longestFlat;
  }

  /** Counts samples that hold and the longest stretch of them. */
  private static final class Runs {
    private int total;
    private int longest;
    private int current;

    boolean next(boolean holds) {
      current = holds ? current + 1 : 0;
      total += holds ? 1 : 0;
      longest = Math.max(longest, current);
      return holds;
    }
  }
}
