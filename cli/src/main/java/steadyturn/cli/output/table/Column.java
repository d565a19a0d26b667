package steadyturn.cli.output.table;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.Words;

/** One column of the lesson table: a measure at a key position, under a head of two lines. */
record Column(String group, String head, Measure measure, String at) {

  /** The one row a swing that a teacher reads first. */
  static final List<Column> OF_A_LESSON =
      List.of(
          new Column(
              Words.say("column.at-top"), Words.say("column.turn"), Measure.PELVIS_TURN, "top"),
          new Column("", Words.say("column.slide"), Measure.PELVIS_SLIDE, "top"),
          new Column("", Words.say("column.pivot"), Measure.PELVIS_CENTRE_ALONG, "top"),
          new Column(
              Words.say("column.at-impact"),
              Words.say("column.turn"),
              Measure.PELVIS_TURN,
              "impact"),
          new Column("", Words.say("column.slide"), Measure.PELVIS_SLIDE, "impact"),
          new Column("", Words.say("column.pivot"), Measure.PELVIS_CENTRE_ALONG, "impact"),
          new Column(
              Words.say("column.release"), Words.say("column.ms"), Measure.WRIST_RELEASE, ""),
          new Column(
              Words.say("column.tempo"), Words.say("column.ratio"), Measure.TEMPO_RATIO, ""));

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
