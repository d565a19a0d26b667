package steadyturn.ingest.recording.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.Function;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Which column of a motion table goes where. Values in use get a slot: slot 0 is time, then six a
 * body point (accelerometer x y z, gyroscope x y z); every other column is skipped.
 */
public final class MotionLayout {

  public static final int SLOTS_PER_POINT = 6;
  private static final int SKIP = -1;

  private final List<Channel> channels;
  private final List<BodyPoint> points;
  private final List<PointColumns> pointColumns;
  private final int[] slotOfColumn;
  private final double[] factorOfColumn;
  private final boolean hasTime;

  private MotionLayout(
      List<Channel> channels,
      List<BodyPoint> points,
      List<PointColumns> pointColumns,
      int[] slotOfColumn,
      double[] factorOfColumn,
      boolean hasTime) {
    this.channels = channels;
    this.points = points;
    this.pointColumns = pointColumns;
    this.slotOfColumn = slotOfColumn;
    this.factorOfColumn = factorOfColumn;
    this.hasTime = hasTime;
  }

  /** Finds the columns in use; what is left out, and why, goes to the notices. */
  public static MotionLayout of(
      Path channelsFile,
      List<Channel> channels,
      Function<String, Optional<BodyPoint>> pointOf,
      List<String> notices) {
    int[] slots = new int[channels.size()];
    double[] factors = new double[channels.size()];
    Arrays.fill(slots, SKIP);
    boolean hasTime = placeTime(channelsFile, channels, slots, factors, notices);
    Map<BodyPoint, PointColumns> found = new EnumMap<>(BodyPoint.class);
    new Sorting(channelsFile, channels, pointOf, notices).into(found);
    List<BodyPoint> points = new ArrayList<>();
    List<PointColumns> placed = new ArrayList<>();
    found.forEach(
        (point, columns) -> {
          if (columns.complete(channelsFile, point, notices)) {
            columns.place(firstSlot(points.size()), slots, factors);
            points.add(point);
            placed.add(columns);
          }
        });
    return new MotionLayout(channels, points, placed, slots, factors, hasTime);
  }

  private static boolean placeTime(
      Path file, List<Channel> channels, int[] slots, double[] factors, List<String> notices) {
    for (int i = 0; i < channels.size(); i++) {
      Channel channel = channels.get(i);
      if (channel.type().equals("LATENCY")) {
        if (channel.bad()) {
          notices.add(
              RecordingException.place(file, channel.line(), "")
                  + ": the time column is marked bad; time is counted from the sampling rate.");
          return false;
        }
        OptionalDouble factor = UnitWords.timeToS(channel.units());
        slots[i] = 0;
        factors[i] =
            factor.orElseThrow(
                () ->
                    RecordingException.at(
                        file,
                        channel.line(),
                        "units",
                        "\"" + channel.units() + "\" is no unit of time known here. Use s."));
        return true;
      }
    }
    return false;
  }

  public List<BodyPoint> points() {
    return points;
  }

  String columnName(int column) {
    return channels.get(column).name();
  }

  /** The slot of each column; below 0 for a column to skip. */
  int[] slotOfColumn() {
    return slotOfColumn.clone();
  }

  /** What turns each column in use into SI units. */
  double[] factorOfColumn() {
    return factorOfColumn.clone();
  }

  /** Number of slots: time and six a body point. */
  public int slots() {
    return 1 + SLOTS_PER_POINT * points.size();
  }

  public static int firstSlot(int pointIndex) {
    return 1 + SLOTS_PER_POINT * pointIndex;
  }

  /** Largest acceleration the unit can show, m/s^2; NaN when its channels do not tell. */
  public double accelFullScaleMps2(int pointIndex) {
    return pointColumns.get(pointIndex).fullScale(0);
  }

  /** Largest rate the unit can show, rad/s; NaN when its channels do not tell. */
  public double gyroFullScaleRadPerS(int pointIndex) {
    return pointColumns.get(pointIndex).fullScale(3);
  }

  /** Whether all six channels say that a calibration of the unit was applied. */
  public boolean calibrated(int pointIndex) {
    return pointColumns.get(pointIndex).calibrated();
  }

  public boolean hasTime() {
    return hasTime;
  }

  /** Sorts the channels by body point and names what has none. */
  private record Sorting(
      Path file,
      List<Channel> channels,
      Function<String, Optional<BodyPoint>> pointOf,
      List<String> notices) {

    void into(Map<BodyPoint, PointColumns> found) {
      TreeSet<String> unknownPoints = new TreeSet<>();
      TreeSet<String> otherTypes = new TreeSet<>();
      for (int i = 0; i < channels.size(); i++) {
        Channel channel = channels.get(i);
        if (channel.type().equals("ACCEL") || channel.type().equals("GYRO")) {
          Optional<BodyPoint> point = pointOf.apply(channel.trackedPoint());
          if (point.isEmpty()) {
            unknownPoints.add(channel.trackedPoint().isEmpty() ? "n/a" : channel.trackedPoint());
          } else {
            found.computeIfAbsent(point.get(), p -> new PointColumns()).add(file, i, channel);
          }
        } else if (!channel.type().equals("LATENCY")) {
          otherTypes.add(channel.type().isEmpty() ? "n/a" : channel.type());
        }
      }
      tell(unknownPoints, "body points left out, as this program has no use for them: ");
      tell(otherTypes, "channels left out, as this program has no use for their type: ");
    }

    private void tell(TreeSet<String> words, String what) {
      if (!words.isEmpty()) {
        notices.add(
            RecordingException.place(file, 0, "") + ": " + what + String.join(", ", words) + ".");
      }
    }
  }
}
