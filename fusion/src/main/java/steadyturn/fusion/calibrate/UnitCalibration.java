package steadyturn.fusion.calibrate;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntFunction;
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
 * @param gyro the gyroscope's errors, rad/s
 * @param accel the accelerometer's, m/s^2
 * @param parts which steps it rests on: {@code table-rest}, {@code six-position}, {@code
 *     known-turns}; each with the day it was done
 * @param figures what was measured on the way, by a name that carries the unit
 */
public record UnitCalibration(
    String serialNumber,
    LocalDate date,
    double gravityMps2,
    Correction gyro,
    Correction accel,
    SortedMap<String, LocalDate> parts,
    SortedMap<String, Double> figures) {

  /**
   * What turns the shown into the true for one sensor.
   *
   * @param bias shown at rest (rad/s; wanders from day to day) or without force (m/s^2), unit axes
   * @param matrix takes off scale errors and cross-talk
   */
  public record Correction(Vector3 bias, AxisMatrix matrix) {

    static final Correction NONE = new Correction(Vector3.ZERO, AxisMatrix.IDENTITY);

    /**
     * A value lost on one axis is lost on that axis only where the matrix leaves the others alone.
     */
    private double[][] of(IntFunction<double[]> shown) {
      double[] x = shown.apply(0);
      double[] y = shown.apply(1);
      double[] z = shown.apply(2);
      double[][] out = new double[3][x.length];
      for (int axis = 0; axis < 3; axis++) {
        Vector3 row = matrix.row(axis);
        for (int i = 0; i < x.length; i++) {
          out[axis][i] =
              part(row.x(), x[i] - bias.x())
                  + part(row.y(), y[i] - bias.y())
                  + part(row.z(), z[i] - bias.z());
        }
      }
      return out;
    }

    private static double part(double factor, double value) {
      return factor == 0 ? 0 : factor * value;
    }
  }

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
        Correction.NONE,
        Correction.NONE,
        new TreeMap<>(),
        new TreeMap<>());
  }

  /** With the bias of a table rest. */
  public UnitCalibration with(TableRest rest, LocalDate day) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put("gyro_bias_sigma_deg_per_s", Math.toDegrees(rest.gyroBiasSigmaRadPerS()));
    more.put("gyro_noise_deg_per_s", Math.toDegrees(rest.gyroNoiseRadPerS()));
    more.put("accel_noise_m_per_s2", rest.accelNoiseMps2());
    Correction found = new Correction(rest.gyroBiasRadPerS(), gyro.matrix);
    return new UnitCalibration(
        serialNumber, day, gravityMps2, found, accel, plusPart(TABLE_REST, day), more);
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
    Correction found = new Correction(positions.bias(), errors.inverse());
    return new UnitCalibration(
        serialNumber, day, atGravityMps2, gyro, found, plusPart(SIX_POSITION, day), more);
  }

  /** With the gyroscope's scale and cross-talk; do it before the six positions. */
  public UnitCalibration with(KnownTurns turns, LocalDate day) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put("gyro_turn_residual_deg", Math.toDegrees(turns.residualRad()));
    for (int axis = 0; axis < 3; axis++) {
      more.put("gyro_matrix_sigma_" + "xyz".charAt(axis), turns.errorsSigma(axis));
    }
    Correction found = new Correction(gyro.bias, turns.errors().inverse());
    return new UnitCalibration(
        serialNumber, day, gravityMps2, found, accel, plusPart(KNOWN_TURNS, day), more);
  }

  /** With one more figure measured on the way. */
  public UnitCalibration withFigure(String name, double value) {
    SortedMap<String, Double> more = new TreeMap<>(figures);
    more.put(name, value);
    return new UnitCalibration(serialNumber, date, gravityMps2, gyro, accel, parts, more);
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
          "the calibration of unit " + serialNumber + " does not belong to unit " + serial);
    }
    if (stream.facts().calibrated()) {
      return stream;
    }
    return new UnitStream(
        complete() ? stream.facts().asCalibrated() : stream.facts(),
        stream.timeColumnS(),
        accel.of(stream::accelColumnMps2),
        gyro.of(stream::gyroColumnRadPerS));
  }
}
