package steadyturn.cli.output.tsv;

import java.util.LinkedHashMap;
import java.util.Map;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/** The JSON that explains the columns of the result files. */
final class MeasureColumns {

  private MeasureColumns() {}

  static Map<String, Object> explained(LessonResult result) {
    Map<String, Object> columns = new LinkedHashMap<>();
    columns.put("recording", says("The recording the swing was found in."));
    columns.put("player", says("Label of the player."));
    columns.put("swing", says("Number of the swing in the recording, from 1."));
    columns.put("club", says("Club as noted in the events file."));
    columns.put("kind", says("hit: a ball was struck; practice: none was."));
    columns.put("flags", says("What a reader must know of the swing, comma-separated."));
    columns.put("measure", whichMeasure());
    columns.put("at", says("Key position it holds for; n/a for the whole swing."));
    columns.put("value", says("In the unit of the column unit; n/a when withheld."));
    columns.put("unit", says("Unit of value, low and high."));
    columns.put("low", says("Lower end of the 95 % interval."));
    columns.put("high", says("Upper end of the 95 % interval; n/a for an \"at least\" value."));
    columns.put("grade", says("measured, estimated or withheld."));
    columns.put("why", says("Reason of a withheld value, caveat of an estimated one."));
    columns.put("TargetLine", result.aim());
    columns.put("Notices", Words.english().told(result.notices()).keySet());
    return columns;
  }

  static Map<String, Object> keyPositions() {
    Map<String, Object> columns = new LinkedHashMap<>();
    columns.put("swing", says("Number of the swing in the recording, from 1."));
    columns.put("event", says("Key position."));
    columns.put("time", seconds("Since the first sample of the pelvis unit."));
    columns.put("sd", seconds("Standard deviation of that time."));
    columns.put("grade", says("measured or estimated."));
    columns.put("why", says("Caveat of an estimated time."));
    return columns;
  }

  private static Map<String, Object> whichMeasure() {
    Map<String, String> levels = new LinkedHashMap<>();
    for (Measure measure : Measure.values()) {
      levels.put(measure.id(), Words.english().text("name." + measure.id()));
    }
    Map<String, Object> column = new LinkedHashMap<>(says("What was measured."));
    column.put("Levels", levels);
    return column;
  }

  private static Map<String, String> says(String words) {
    return Map.of("Description", words);
  }

  private static Map<String, String> seconds(String words) {
    Map<String, String> column = new LinkedHashMap<>();
    column.put("Description", words);
    column.put("Units", "s");
    return column;
  }
}
