/**
 * Finds and takes off the errors of one unit. In: recordings of a unit lying still, in six
 * positions, or turned by known angles. Out: {@link UnitCalibration}, dated, kept per serial number
 * by {@link CalibrationStore}. Start at {@link UnitCalibration#apply}. {@link AllanDeviation} and
 * {@link NoiseFigures} say how noisy a unit is. Leaves bias in movement to {@code fusion.filter}.
 */
@NullMarked
package steadyturn.fusion.calibrate;

import org.jspecify.annotations.NullMarked;
