package steadyturn.fusion.calibrate;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * The errors found for one unit, ready to be taken off: {@code true = matrix (shown - bias)} for
 * each sensor.
 *
 * @param serialNumber the unit's serial number
 * @param date the day of the last part of it
 * @param gravityMps2 gravity it rests on, m/s^2
 * @param gyroBiasRadPerS shown at rest, unit axes, rad/s; wanders from day to day
 * @param gyroMatrix takes off scale errors and cross-talk of the gyroscope
 * @param accelBiasMps2 shown without force, unit axes, m/s^2
 * @param accelMatrix the same for the accelerometer
 * @param parts which steps it rests on: {@code table-rest}, {@code six-position}, {@code
 *     known-turns}; each with the day it was done
 * @param figures what was measured on the way, by a name that carries the unit
 */
public record UnitCalibration(
    String serialNumber,
    LocalDate date,
    double gravityMps2,
    Vector3 gyroBiasRadPerS,
    AxisMatrix gyroMatrix,
    Vector3 accelBiasMps2,
    AxisMatrix accelMatrix,
    SortedMap<String, LocalDate> parts,
    SortedMap<String, Double> figures) {

  public static final String TABLE_REST = "table-rest";
  public static final String SIX_POSITION = "six-position";
  public static final String KNOWN_TURNS = "known-turns";

  public UnitCalibration {
    if (serialNumber.isBlank()) {
      throw new CalibrationException("a calibration needs the unit's serial number");
    }
    if (!(gravityMps2 > 9.7 && gravityMps2 < 9.9)) {
      throw new IllegalArgumentException("gravity on Earth is 9.76..9.84, was " + gravityMps2);
    }
    parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
    figures = Collections.unmodifiableSortedMap(new TreeMap<>(figures));
  }

  /** A unit of which nothing was found yet. */
  public static UnitCalibration none(String serialNumber, LocalDate date) {
    return new UnitCalibration(
        serialNumber,
        date,
        StandardGravity.MPS2,
        Vector3.ZERO,
        AxisMatrix.IDENTITY,
        Vector3.ZERO,
        AxisMatrix.IDENTITY,
        new TreeMap<>(),
        new TreeMap<>());
  }

  /** With the bias of a table rest. */
  public UnitCalibration with(TableRest rest, LocalDate day) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put("gyro_bias_sigma_deg_per_s", Math.toDegrees(rest.gyroBiasSigmaRadPerS()));
    more.put("gyro_noise_deg_per_s", Math.toDegrees(rest.gyroNoiseRadPerS()));
    more.put("accel_noise_m_per_s2", rest.accelNoiseMps2());
    return new UnitCalibration(
        serialNumber,
        day,
        gravityMps2,
        rest.gyroBiasRadPerS(),
        gyroMatrix,
        accelBiasMps2,
        accelMatrix,
        plusPart(TABLE_REST, day),
        more);
  }

  /**
   * With the accelerometer's errors. Where the gyroscope was not turned against the same faces, the
   * turn that all accelerometer axes share is left in, so that both sensors keep common axes.
   */
  public UnitCalibration with(SixPositions positions, double atGravityMps2, LocalDate day) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put("accel_residual_m_per_s2", positions.residualMps2());
    more.put("accel_bias_sigma_m_per_s2", positions.biasSigmaMps2());
    more.put("accel_matrix_sigma", positions.errorsSigma());
    boolean commonFaces = parts.containsKey(KNOWN_TURNS);
    AxisMatrix errors = commonFaces ? positions.errors() : positions.errors().withoutTurn();
    return new UnitCalibration(
        serialNumber,
        day,
        atGravityMps2,
        gyroBiasRadPerS,
        gyroMatrix,
        positions.bias(),
        errors.inverse(),
        plusPart(SIX_POSITION, day),
        more);
  }

  /** With the gyroscope's scale and cross-talk; do it before the six positions. */
  public UnitCalibration with(KnownTurns turns, LocalDate day) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put("gyro_turn_residual_deg", Math.toDegrees(turns.residualRad()));
    for (int axis = 0; axis < 3; axis++) {
      more.put("gyro_matrix_sigma_" + "xyz".charAt(axis), turns.errorsSigma(axis));
    }
    return new UnitCalibration(
        serialNumber,
        day,
        gravityMps2,
        gyroBiasRadPerS,
        turns.errors().inverse(),
        accelBiasMps2,
        accelMatrix,
        plusPart(KNOWN_TURNS, day),
        more);
  }

  /** With one more figure measured on the way. */
  public UnitCalibration withFigure(String name, double value) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put(name, value);
    return new UnitCalibration(
        serialNumber,
        date,
        gravityMps2,
        gyroBiasRadPerS,
        gyroMatrix,
        accelBiasMps2,
        accelMatrix,
        parts,
        more);
  }

  private SortedMap<String, LocalDate> plusPart(String part, LocalDate day) {
    SortedMap<String, LocalDate> more = new TreeMap<>(parts);
    more.put(part, day);
    return more;
  }

  /** Whether both sensors were calibrated, so that what is left is small. */
  public boolean complete() {
    return parts.keySet().containsAll(List.of(SIX_POSITION, KNOWN_TURNS));
  }

  /**
   * The stream with the errors taken off. A stream that says it is calibrated comes back as it is;
   * one of another unit is refused.
   */
  public UnitStream apply(UnitStream stream) {
    String serial = stream.facts().serialNumber();
    if (!serial.isEmpty() && !serial.equals(serialNumber)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the calibration of unit %s does not belong to unit %s",
              serialNumber,
              serial));
    }
    if (stream.facts().calibrated()) {
      return stream;
    }
    return new UnitStream(
        complete() ? stream.facts().asCalibrated() : stream.facts(),
        stream.timeColumnS(),
        corrected(
            accelMatrix,
            accelBiasMps2,
            stream.accelColumnMps2(0),
            stream.accelColumnMps2(1),
            stream.accelColumnMps2(2)),
        corrected(
            gyroMatrix,
            gyroBiasRadPerS,
            stream.gyroColumnRadPerS(0),
            stream.gyroColumnRadPerS(1),
            stream.gyroColumnRadPerS(2)));
  }

  /**
   * A value lost on one axis is lost on that axis only where the matrix leaves the others alone.
   */
  private static double[][] corrected(
      AxisMatrix m, Vector3 bias, double[] sx, double[] sy, double[] sz) {
    double[][] out = new double[3][sx.length];
    for (int axis = 0; axis < 3; axis++) {
      Vector3 row = m.row(axis);
      for (int i = 0; i < sx.length; i++) {
        out[axis][i] =
            part(row.x(), sx[i] - bias.x())
                + part(row.y(), sy[i] - bias.y())
                + part(row.z(), sz[i] - bias.z());
      }
    }
    return out;
  }

  private static double part(double factor, double value) {
    return factor == 0 ? 0 : factor * value;
  }
}
