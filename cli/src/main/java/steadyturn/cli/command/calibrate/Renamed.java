package steadyturn.cli.command.calibrate;

import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The same samples under the serial number that the user gave. */
final class Renamed {

  private Renamed() {}

  static UnitStream to(String serialNumber, UnitStream unit) {
    UnitFacts facts = unit.facts();
    UnitFacts renamed =
        new UnitFacts(
            facts.point(),
            serialNumber,
            facts.nominalRateHz(),
            facts.accelFullScaleMps2(),
            facts.gyroFullScaleRadPerS(),
            facts.calibrated());
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = unit.accelColumnMps2(axis);
      gyro[axis] = unit.gyroColumnRadPerS(axis);
    }
    return new UnitStream(renamed, unit.timeColumnS(), accel, gyro);
  }
}
