package steadyturn.cli.output.tsv;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/** The JSON that explains the columns of the result files. */
final class MeasureColumns {

  private MeasureColumns() {}

  static final List<String> OF_KEY_POSITIONS =
      List.of("swing", "event", "time", "sd", "grade", "why");

  static Map<String, Object> explained(LessonResult result) {
    Map<String, Object> columns = new LinkedHashMap<>();
    TsvReport.COLUMNS.forEach(column -> columns.put(column, says("explains.value." + column)));
    columns.put("measure", whichMeasure());
    columns.put("TargetLine", result.aim());
    columns.put("Notices", Words.english().told(result.notices()).keySet());
    return columns;
  }

  static Map<String, Object> keyPositions() {
    Map<String, Object> columns = new LinkedHashMap<>();
    OF_KEY_POSITIONS.forEach(column -> columns.put(column, says("explains.event." + column)));
    columns.put("time", seconds("explains.event.time"));
    columns.put("sd", seconds("explains.event.sd"));
    return columns;
  }

  private static Map<String, Object> whichMeasure() {
    Map<String, String> levels = new LinkedHashMap<>();
    for (Measure measure : Measure.values()) {
      levels.put(measure.id(), Words.english().text("name." + measure.id()));
    }
    Map<String, Object> column = new LinkedHashMap<>(says("explains.value.measure"));
    column.put("Levels", levels);
    return column;
  }

  private static Map<String, String> says(String key) {
    return Map.of("Description", Words.english().text(key));
  }

  private static Map<String, String> seconds(String key) {
    Map<String, String> column = new LinkedHashMap<>(says(key));
    column.put("Units", "s");
    return column;
  }
}
