package steadyturn.analysis.rows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.rows.RowColumn.Kind;
import steadyturn.ingest.sample.Offered;

/**
 * The tables and their columns (docs/tables.md). {@code archive}, {@code recording} and {@code
 * swing} together name a swing in all of them.
 */
@Offered
@SuppressWarnings("ImmutableEnumChecker") // an unmodifiable list
public enum RowTable {
  /** A row a recording, those that could not be analysed among them. */
  RECORDINGS(
      "archive,recording,player,handed,lesson,start,aim,swings:whole,notices,calibrations,failure"
          + ",program_version,settings"),

  /** A row a value of a swing. */
  RESULTS(
      "archive,recording,player,lesson,start,swing:whole,club,kind,flags,measure,key_position,value:number"
          + ",low:number,high:number,unit,grade,reason,reason_args,program_version,settings"),

  /** A row a key position of a swing. */
  KEY_POSITIONS(
      "archive,recording,swing:whole,key_position,time_s:number,sd_s:number,grade,reason,reason_args"),

  /** A row an instant of a swing; quantities of units with other instants are empty there. */
  CURVES("archive,recording,swing:whole,time_s:number" + curveColumns()),

  /** A row an instant of a unit, from the first to the last key position of a swing. */
  ORIENTATIONS(
      "archive,recording,swing:whole,point,time_s:number,q_earth_unit_w:number"
          + ",q_earth_unit_x:number,q_earth_unit_y:number,q_earth_unit_z:number"
          + ",inclination_sigma_deg:number,heading_sigma_deg:number");

  private final List<RowColumn> columns;

  RowTable(String columns) {
    this.columns = Arrays.stream(columns.split(",", -1)).map(RowTable::column).toList();
  }

  private static RowColumn column(String text) {
    String[] parts = text.split(":", -1);
    Kind kind = parts.length < 2 ? Kind.TEXT : Kind.valueOf(parts[1].toUpperCase(Locale.ROOT));
    return new RowColumn(parts[0], kind);
  }

  /** The quantities that have a course over time, in the order of their columns. */
  static List<Measure> curves() {
    return List.of(
        Measure.PELVIS_TURN,
        Measure.PELVIS_SLIDE,
        Measure.PELVIS_THRUST,
        Measure.PELVIS_LIFT,
        Measure.PELVIS_TILT,
        Measure.PELVIS_SIDETILT,
        Measure.WRIST_COCK,
        Measure.WRIST_FLEXION);
  }

  private static String curveColumns() {
    List<String> columns = new ArrayList<>();
    for (Measure measure : curves()) {
      String id = measure.id().replace('.', '_');
      Stream.of("_", "_sd_").map(of -> id + of + measure.unit() + ":number").forEach(columns::add);
    }
    return "," + String.join(",", columns);
  }

  /** The name of its file, without the ending. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public List<RowColumn> columns() {
    return columns;
  }
}
