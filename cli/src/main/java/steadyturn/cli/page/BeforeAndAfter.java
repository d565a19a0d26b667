package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.drill.DrillRep;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/** Full swings before and after a drill, the repetitions between them, and the drill's goal. */
record BeforeAndAfter(Pen pen, DrillScore score, ComparisonRow effect) {

  private static final int WIDTH = 480;
  private static final int HEIGHT = 240;

  /** The picture; empty without swings on both sides of the drill. */
  static Optional<Html> draw(Pen pen, DrillScore score) {
    return score.effect().map(effect -> new BeforeAndAfter(pen, score, effect).drawn());
  }

  private Html drawn() {
    Drill drill = score.drill();
    List<MeasureValue> reps = score.reps().stream().map(DrillRep::value).toList();
    double firstS = score.reps().isEmpty() ? Double.NaN : score.reps().get(0).timeS();
    List<MeasureValue> before = new ArrayList<>();
    List<MeasureValue> after = new ArrayList<>();
    for (SwingResult swing : pen.sheet().swings()) {
      swing
          .measure(drill.judgedBy().measure(), drill.judgedBy().at())
          .filter(MeasureValue::given)
          .ifPresent(v -> (swing.timeS(SwingEvent.TOP) > firstS ? after : before).add(v));
    }
    Measure measure = drill.judgedBy().measure();
    String title = pen.text("picture.effect.title", pen.text("drill." + drill.name() + ".name"));
    String first = pen.amount(effect.first(), measure);
    String second = pen.amount(effect.second(), measure);
    String alt = pen.text("picture.effect.alt", pen.name(drill.judgedBy()), first, second);
    Drawing drawing = new Drawing("effect-" + drill.name(), WIDTH, HEIGHT, title, alt);
    Frame frame = frame(drill, List.of(before, reps, after));
    frame.axisY(drawing, pen.words(), pen.unit(measure), pen.amounts().factor(measure), 5);
    double y1 = frame.y(drill.high());
    drawing.wanted(frame.left(), y1, frame.width(), frame.y(drill.low()) - y1);
    column(drawing, frame, 0, "picture.before", before, Ink.BACK);
    column(drawing, frame, 1, "picture.drill", reps, Ink.POINT);
    column(drawing, frame, 2, "picture.after", after, Ink.DOWN);
    return drawing.done();
  }

  private static Frame frame(Drill drill, List<List<MeasureValue>> columns) {
    double low = drill.low();
    double high = drill.high();
    for (MeasureValue value : columns.stream().flatMap(List::stream).toList()) {
      low = Math.min(low, value.low());
      high = Math.max(high, value.high());
    }
    double room = 0.06 * (high - low);
    return new Frame(58, 10, WIDTH - 72, HEIGHT - 46, 0, 3, low - room, high + room);
  }

  private void column(
      Drawing drawing,
      Frame frame,
      int column,
      String key,
      List<MeasureValue> values,
      String colour) {
    for (int i = 0; i < values.size(); i++) {
      MeasureValue v = values.get(i);
      double x = frame.x(column + (i + 1.0) / (values.size() + 1));
      drawing.line(x, frame.y(v.low()), x, frame.y(v.high()), Ink.QUIET, 1.2);
      drawing.dot(x, frame.y(v.value()), 5, colour);
    }
    drawing.words(frame.x(column + 0.5), frame.bottom() + 22, "middle", pen.text(key), "label");
  }
}
