package steadyturn.ingest.recording.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import steadyturn.ingest.sample.BodyPoint;

/** The six columns of one body point: accelerometer x y z, gyroscope x y z. */
final class PointColumns {

  private final Channel[] channels = new Channel[MotionLayout.SLOTS_PER_POINT];
  private final int[] columns = new int[MotionLayout.SLOTS_PER_POINT];
  private final double[] factors = new double[MotionLayout.SLOTS_PER_POINT];
  private final List<String> bad = new ArrayList<>();

  void add(Path file, int column, Channel channel) {
    if (channel.bad()) {
      bad.add(channel.name());
      return;
    }
    if (channel.axis() < 0) {
      throw RecordingException.at(
          file,
          channel.line(),
          "component",
          "\"" + channel.component() + "\" is no axis of a sensor. Use x, y or z.");
    }
    boolean accel = channel.type().equals("ACCEL");
    int at = channel.axis() + (accel ? 0 : 3);
    if (channels[at] != null) {
      throw RecordingException.at(
          file,
          channel.line(),
          channel.type()
              + " "
              + channel.component()
              + " of "
              + channel.trackedPoint()
              + " is already in line "
              + channels[at].line()
              + ". Mark one of the two bad in the column status.");
    }
    channels[at] = channel;
    columns[at] = column;
    factors[at] = factor(file, channel, accel);
  }

  private static double factor(Path file, Channel channel, boolean accel) {
    OptionalDouble factor =
        accel ? UnitWords.accelToMps2(channel.units()) : UnitWords.rateToRadPerS(channel.units());
    return factor.orElseThrow(
        () ->
            RecordingException.at(
                file,
                channel.line(),
                "units",
                "\""
                    + channel.units()
                    + "\" is no unit of "
                    + (accel
                        ? "acceleration known here. Use m/s^2 or g."
                        : "rate known here. Use rad/s or deg/s.")));
  }

  boolean complete(Path file, BodyPoint point, List<String> notices) {
    List<String> lacking = new ArrayList<>();
    for (int i = 0; i < MotionLayout.SLOTS_PER_POINT; i++) {
      if (channels[i] == null) {
        lacking.add((i < 3 ? "ACCEL " : "GYRO ") + "xyz".charAt(i % 3));
      }
    }
    if (!lacking.isEmpty()) {
      notices.add(
          RecordingException.place(file, 0, "")
              + ": "
              + point.trackedPoint()
              + " left out: a unit needs all six channels and lacks "
              + String.join(", ", lacking)
              + (bad.isEmpty() ? "." : " (marked bad: " + String.join(", ", bad) + ")."));
    }
    return lacking.isEmpty();
  }

  /** Whether all six channels say that a calibration of the unit was applied. */
  boolean calibrated() {
    return Arrays.stream(channels).allMatch(c -> c != null && c.calibrated());
  }

  /** The smallest full scale of three axes, SI. */
  double fullScale(int first) {
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = first; i < first + 3; i++) {
      smallest = Math.min(smallest, channels[i].fullScale() * factors[i]);
    }
    return smallest;
  }

  void place(int firstSlot, int[] slots, double[] factorOfColumn) {
    for (int i = 0; i < MotionLayout.SLOTS_PER_POINT; i++) {
      slots[columns[i]] = firstSlot + i;
      factorOfColumn[columns[i]] = factors[i];
    }
  }
}
