package steadyturn.ingest.columnmap.check;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.sample.Averages;

/**
 * Notices angles that are mapped as rates: roll and pitch that a unit worked out itself lie where
 * its accelerometer says, and stay there while the unit is still; a rate does neither.
 */
final class AngleColumns {

  /** As near as this the accelerometer of a moving unit tells them, deg: our choice. */
  private static final double NEAR_DEG = 12;

  /** A unit that never leaned by so much shows angles about as small as rates, deg. */
  private static final double LEANT_DEG = 20;

  /** Half of the samples lie farther from the middle: a unit that was turned about, deg. */
  private static final double MOVED_DEG = 10;

  private static final String AXES = "xyz";

  private AngleColumns() {}

  /** What is wrong, if something is. */
  static Optional<String> among(EvenSamples samples, UnitColumns columns) {
    double[] roll = new double[samples.size()];
    double[] pitch = new double[samples.size()];
    double[][] v = samples.values();
    for (int i = 0; i < roll.length; i++) {
      roll[i] = Math.toDegrees(Math.atan2(v[1][i], v[2][i]));
      pitch[i] = Math.toDegrees(Math.atan2(-v[0][i], Math.hypot(v[1][i], v[2][i])));
    }
    double toDeg = 1 / columns.gyro().orElseThrow().toSi();
    for (int axis = 0; axis < 3; axis++) {
      double[] column = v[3 + axis];
      if (follows(column, roll, x -> x * toDeg) || follows(column, pitch, x -> x * toDeg)) {
        return Optional.of(
            "gyro "
                + AXES.charAt(axis)
                + " follows the lean that gravity shows: these are angles, not rates. Map the"
                + " gyroscope's own columns; if the table has none, let the unit send them.");
      }
    }
    return Optional.empty();
  }

  /** Whether a column, in degrees or in radians, is the angle or its opposite. */
  private static boolean follows(double[] column, double[] angleDeg, DoubleUnaryOperator written) {
    double middleDeg = median(angleDeg);
    boolean isMoved =
        median(Arrays.stream(angleDeg).map(a -> Math.abs(a - middleDeg)).toArray()) > MOVED_DEG;
    boolean isLeant = Math.abs(middleDeg) > LEANT_DEG;
    for (double scale : new double[] {1, -1, Math.toDegrees(1), -Math.toDegrees(1)}) {
      double[] off = new double[column.length];
      Arrays.setAll(
          off,
          i -> {
            double apart = scale * written.applyAsDouble(column[i]) - angleDeg[i];
            return Math.abs(Math.IEEEremainder(apart, 360));
          });
      // the radians of a unit that only lies there may be the bias of a gyroscope by chance
      if (median(off) < NEAR_DEG && (isMoved || (isLeant && Math.abs(scale) == 1))) {
        return true;
      }
    }
    return false;
  }

  private static double median(double[] values) {
    double[] whole = Arrays.stream(values).filter(x -> !Double.isNaN(x)).toArray();
    return whole.length == 0 ? Double.NaN : Averages.median(whole);
  }
}
