package steadyturn.ingest.columnmap;

import java.util.List;
import java.util.OptionalDouble;
import steadyturn.ingest.sample.BodyPoint;

/**
 * The columns of one unit.
 *
 * @param accel x, y, z in the unit's own right-handed axes
 * @param accelToMps2 what turns them into m/s^2
 * @param gyro x, y, z in the same axes
 * @param gyroToRadPerS what turns them into rad/s
 * @param accelFullScaleMps2 infinite when not stated
 * @param gyroFullScaleRadPerS infinite when not stated
 * @param rateHz the rate the unit was set to; empty when it is to be taken from the samples
 */
record UnitColumns(
    BodyPoint point,
    String serialNumber,
    List<ColumnRef> accel,
    double accelToMps2,
    List<ColumnRef> gyro,
    double gyroToRadPerS,
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS,
    OptionalDouble rateHz) {

  UnitColumns {
    accel = List.copyOf(accel);
    gyro = List.copyOf(gyro);
  }

  UnitColumns at(BodyPoint other) {
    return new UnitColumns(
        other,
        serialNumber,
        accel,
        accelToMps2,
        gyro,
        gyroToRadPerS,
        accelFullScaleMps2,
        gyroFullScaleRadPerS,
        rateHz);
  }
}
