package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/** One column of the lesson table: a measure at a key position, under a head of two words. */
record Column(String groupWord, String headWord, Measure measure, String at) {

  /** The one row a swing that a teacher reads first. */
  static final List<Column> OF_A_LESSON =
      List.of(
          new Column("at-top", "turn", Measure.PELVIS_TURN, "top"),
          new Column("", "slide", Measure.PELVIS_SLIDE, "top"),
          new Column("", "pivot", Measure.PELVIS_CENTRE_DISTANCE, "top"),
          new Column("at-impact", "turn", Measure.PELVIS_TURN, "impact"),
          new Column("", "slide", Measure.PELVIS_SLIDE, "impact"),
          new Column("release", "ms", Measure.WRIST_RELEASE, ""),
          new Column("tempo", "ratio", Measure.TEMPO_RATIO, ""));

  /** What this column and the next ones have in common. */
  String group() {
    return groupWord.isEmpty() ? "" : say("column." + groupWord);
  }

  String head() {
    return say("column." + headWord);
  }

  Optional<MeasureValue> value(SwingResult swing) {
    return swing.measure(measure, at);
  }

  boolean isGivenIn(List<SwingResult> swings) {
    return swings.stream().anyMatch(s -> value(s).filter(MeasureValue::given).isPresent());
  }

  String cell(SwingResult swing) {
    return value(swing).map(Figure::narrow).orElse(Figure.WITHHELD);
  }
}
