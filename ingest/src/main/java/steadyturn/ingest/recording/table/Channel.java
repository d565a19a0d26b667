package steadyturn.ingest.recording.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One column of a motion table, as a row of its channels file tells it.
 *
 * @param line in the channels file, counted from 1
 * @param type upper case: ACCEL, GYRO, LATENCY, ...
 * @param component x, y, z or another word
 * @param bad whether its status says that it is not to be used
 * @param fullScale largest value it can show, in its own units; NaN when not stated
 * @param calibrated whether its values were corrected by a calibration of this very unit
 */
public record Channel(
    int line,
    String name,
    String component,
    String type,
    String trackedPoint,
    String units,
    boolean bad,
    double fullScale,
    boolean calibrated) {

  private static final List<String> NEEDED =
      List.of("name", "component", "type", "tracked_point", "units");

  /** The channels of a motion table in column order. */
  public static List<Channel> read(TextTable table) {
    for (String column : NEEDED) {
      if (!table.has(column)) {
        throw RecordingException.at(
            table.file(),
            1,
            "has no column \""
                + column
                + "\". A channels file needs "
                + String.join(", ", NEEDED)
                + ".");
      }
    }
    List<Channel> channels = new ArrayList<>();
    for (TextTable.Row row : table.rows()) {
      channels.add(
          new Channel(
              row.line(),
              table.text(row, "name"),
              table.text(row, "component").toLowerCase(Locale.ROOT),
              table.text(row, "type").toUpperCase(Locale.ROOT),
              table.text(row, "tracked_point"),
              table.text(row, "units"),
              table.text(row, "status").equalsIgnoreCase("bad"),
              table.number(row, "full_scale"),
              table.text(row, "calibration").equalsIgnoreCase("applied")));
    }
    return channels;
  }

  /** 0, 1 or 2 for x, y or z; -1 for another word. */
  int axis() {
    return component.length() == 1 ? "xyz".indexOf(component) : -1;
  }
}
