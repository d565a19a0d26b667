package steadyturn.ingest.quality;

import java.util.Arrays;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit at rest whose every figure is known: each channel steps up and down by the same size from
 * sample to sample about its mean, so its spread is that size (times the root of n/(n-1)).
 */
final class SteadyUnit {

  private final BodyPoint point;
  final double rateHz;
  final double[] timeS;
  final double[][] accel = new double[3][];
  final double[][] gyro = new double[3][];
  private double statedHz;
  private double accelFullScale = Double.POSITIVE_INFINITY;
  private double gyroFullScale = Double.POSITIVE_INFINITY;

  SteadyUnit(BodyPoint point, double rateHz, int samples) {
    this.point = point;
    this.rateHz = rateHz;
    statedHz = rateHz;
    timeS = new double[samples];
    Arrays.setAll(timeS, i -> i / rateHz);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = wave(samples, axis == 2 ? 9.80665 : 0, 0.01);
      gyro[axis] = wave(samples, 0, Math.toRadians(0.05));
    }
  }

  /** 20 s at 100 Hz on the pelvis. */
  static SteadyUnit usual() {
    return new SteadyUnit(BodyPoint.PELVIS, 100, 2000);
  }

  static double[] wave(int samples, double mean, double size) {
    double[] values = new double[samples];
    Arrays.setAll(values, i -> mean + (i % 2 == 0 ? size : -size));
    return values;
  }

  SteadyUnit accel(int axis, double mean, double size) {
    accel[axis] = wave(timeS.length, mean, size);
    return this;
  }

  SteadyUnit gyroDegPerS(int axis, double mean, double size) {
    gyro[axis] = wave(timeS.length, Math.toRadians(mean), Math.toRadians(size));
    return this;
  }

  SteadyUnit stated(double hz) {
    statedHz = hz;
    return this;
  }

  SteadyUnit ranges(double accelMps2, double gyroRadPerS) {
    accelFullScale = accelMps2;
    gyroFullScale = gyroRadPerS;
    return this;
  }

  /** Moves every sample from an index on to a later time. */
  SteadyUnit later(int from, double byS) {
    for (int i = from; i < timeS.length; i++) {
      timeS[i] += byS;
    }
    return this;
  }

  UnitStream stream() {
    return new UnitStream(
        new UnitFacts(point, "T", statedHz, accelFullScale, gyroFullScale, false),
        timeS,
        accel,
        gyro);
  }

  UnitReport judged() {
    return UnitQuality.judge(stream());
  }
}
