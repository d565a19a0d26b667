package steadyturn.ingest.columnmap.layout;

import java.util.List;

/**
 * Three columns that are one quantity.
 *
 * @param key its word in the map, which says what it is: accel, gravity, gyro, dv (increments of
 *     velocity), dq (increments of turn)
 * @param columns x, y, z in the unit's own right-handed axes; four where turns are quaternions,
 *     scalar first
 * @param toSi what turns them into m/s^2, rad/s, m/s or rad
 * @param fullScaleSi infinite when not stated
 */
public record MappedVector(String key, List<ColumnRef> columns, double toSi, double fullScaleSi) {

  public MappedVector {
    columns = List.copyOf(columns);
  }

  /** Whether each value is what was gathered over one step. */
  public boolean isIncrement() {
    return key.equals("dv") || key.equals("dq");
  }

  public boolean isQuaternion() {
    return columns.size() == 4;
  }

  /** The columns of x, y and z. */
  public List<ColumnRef> xyz() {
    return columns.subList(columns.size() - 3, columns.size());
  }
}
