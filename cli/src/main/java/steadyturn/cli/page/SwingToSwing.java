package steadyturn.cli.page;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/** One dot a swing with its range, one strip a measure, and a band for their mean. */
record SwingToSwing(Pen pen, Drawing drawing) {

  private static final int WIDTH = 480;
  private static final int STRIP = 128;
  private static final List<MeasureAt> STRIPS =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.TEMPO_RATIO, ""));

  /** The picture; empty where no swing has any of the measures. */
  static Optional<Html> draw(Pen pen) {
    List<MeasureAt> strips =
        STRIPS.stream().filter(m -> pen.mean(m.measure(), m.at()).isPresent()).toList();
    if (strips.isEmpty()) {
      return Optional.empty();
    }
    int height = strips.size() * STRIP + 34;
    String title = pen.text("picture.same.title");
    Drawing drawing = new Drawing("same", WIDTH, height, title, alt(pen, strips.get(0)));
    for (int i = 0; i < strips.size(); i++) {
      new SwingToSwing(pen, drawing).strip(strips.get(i), i * STRIP, i == strips.size() - 1);
    }
    return Optional.of(drawing.done());
  }

  private static String alt(Pen pen, MeasureAt what) {
    Measure measure = what.measure();
    GroupSummary mean = pen.mean(measure, what.at()).orElseThrow();
    String spread =
        pen.forPlayer()
            ? pen.amounts().plain(mean.spread(), measure)
            : pen.amounts().amount(mean.spread(), measure);
    String key = "picture.same.alt" + pen.reader();
    return pen.text(key, pen.name(what), pen.amount(mean, measure), spread);
  }

  private void strip(MeasureAt what, double top, boolean last) {
    List<SwingResult> swings = pen.sheet().swings();
    Frame frame = frame(what, top, swings);
    String unit = pen.unit(what.measure());
    drawing.words(
        frame.left(), top + 14, "start", name(what) + (unit.isEmpty() ? "" : ", " + unit), "axis");
    frame.axisY(drawing, pen.words(), "", pen.amounts().factor(what.measure()), 4);
    band(what, frame);
    for (int i = 0; i < swings.size(); i++) {
      double x = frame.x(i + 1);
      for (MeasureValue v : given(swings.get(i), what).stream().toList()) {
        drawing.line(x, frame.y(v.low()), x, frame.y(v.high()), Ink.QUIET, 1.2);
        drawing.dot(x, frame.y(v.value()), 5, Ink.BACK);
      }
      if (last) {
        String number = Integer.toString(swings.get(i).number());
        drawing.words(x, frame.bottom() + 16, "middle", number, "tick");
      }
    }
    if (last) {
      double middle = frame.left() + frame.width() / 2;
      drawing.words(middle, frame.bottom() + 34, "middle", pen.text("picture.same.x"), "axis");
    }
  }

  private String name(MeasureAt what) {
    return pen.forPlayer() ? pen.text("strip." + what.measure().id()) : pen.name(what);
  }

  private static Frame frame(MeasureAt what, double top, List<SwingResult> swings) {
    DoubleSummaryStatistics ends =
        swings.stream()
            .flatMap(swing -> given(swing, what).stream())
            .flatMapToDouble(value -> DoubleStream.of(value.low(), value.high()))
            .summaryStatistics();
    double low = ends.getMin();
    double high = ends.getMax();
    double room = Math.max(1e-6, 0.08 * (high - low));
    return new Frame(
        58, top + 22, WIDTH - 72, STRIP - 34, 0.4, swings.size() + 0.6, low - room, high + room);
  }

  private static Optional<MeasureValue> given(SwingResult swing, MeasureAt what) {
    return swing.measure(what.measure(), what.at()).filter(MeasureValue::given);
  }

  private void band(MeasureAt what, Frame frame) {
    pen.mean(what.measure(), what.at())
        .filter(g -> g.count() >= 3)
        .ifPresent(
            g -> {
              double half = g.halfWidthOfMean();
              double y1 = Math.max(frame.top(), frame.y(g.mean() + half));
              double y2 = Math.min(frame.bottom(), frame.y(g.mean() - half));
              drawing.box(frame.left(), y1, frame.width(), y2 - y1, "none", Ink.BACK, 1);
            });
  }
}
