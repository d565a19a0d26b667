package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/** One dot a swing with its range, one strip a measure, and a band for their mean. */
final class SwingToSwing {

  private static final int WIDTH = 480;
  private static final int STRIP = 128;
  private static final List<MeasureAt> STRIPS =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.TEMPO_RATIO, ""));

  private final Pen pen;

  private SwingToSwing(Pen pen) {
    this.pen = pen;
  }

  /** The picture; empty where no swing has any of the measures. */
  static Optional<Html> draw(Pen pen) {
    List<MeasureAt> strips =
        STRIPS.stream().filter(m -> pen.mean(m.measure(), m.at()).isPresent()).toList();
    return strips.isEmpty() ? Optional.empty() : Optional.of(new SwingToSwing(pen).drawn(strips));
  }

  private Html drawn(List<MeasureAt> strips) {
    MeasureAt first = strips.get(0);
    GroupSummary mean = pen.mean(first.measure(), first.at()).orElseThrow();
    Drawing drawing =
        new Drawing(
            "same",
            WIDTH,
            strips.size() * STRIP + 34,
            pen.words().text("picture.same.title"),
            pen.words()
                .text(
                    "picture.same.alt" + (pen.forPlayer() ? ".player" : ""),
                    pen.name(first),
                    pen.amount(mean, first.measure()),
                    pen.forPlayer()
                        ? pen.amounts().plain(mean.spread(), first.measure())
                        : pen.amounts().amount(mean.spread(), first.measure())));
    for (int i = 0; i < strips.size(); i++) {
      strip(drawing, strips.get(i), i * STRIP, i == strips.size() - 1);
    }
    return drawing.done();
  }

  private void strip(Drawing drawing, MeasureAt what, double top, boolean last) {
    List<SwingResult> swings = pen.sheet().swings();
    Frame frame = frame(what, top, swings);
    String unit = pen.amounts().unit(what.measure());
    drawing.words(
        frame.left(), top + 14, "start", name(what) + (unit.isEmpty() ? "" : ", " + unit), "axis");
    frame.axisY(drawing, pen.words(), "", pen.amounts().factor(what.measure()), 4);
    band(drawing, what, frame);
    for (int i = 0; i < swings.size(); i++) {
      double x = frame.x(i + 1);
      swings
          .get(i)
          .measure(what.measure(), what.at())
          .filter(MeasureValue::given)
          .ifPresent(
              v -> {
                drawing.line(x, frame.y(v.low()), x, frame.y(v.high()), Ink.QUIET, 1.2);
                drawing.dot(x, frame.y(v.value()), 5, Ink.BACK);
              });
      if (last) {
        String number = Integer.toString(swings.get(i).number());
        drawing.words(x, frame.bottom() + 16, "middle", number, "tick");
      }
    }
    if (last) {
      drawing.words(
          frame.left() + frame.width() / 2,
          frame.bottom() + 34,
          "middle",
          pen.words().text("picture.same.x"),
          "axis");
    }
  }

  private String name(MeasureAt what) {
    return pen.forPlayer() ? pen.words().text("strip." + what.measure().id()) : pen.name(what);
  }

  private static Frame frame(MeasureAt what, double top, List<SwingResult> swings) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (SwingResult swing : swings) {
      var value = swing.measure(what.measure(), what.at()).filter(MeasureValue::given);
      if (value.isPresent()) {
        low = Math.min(low, value.get().low());
        high = Math.max(high, value.get().high());
      }
    }
    double room = Math.max(1e-6, 0.08 * (high - low));
    return new Frame(
        58, top + 22, WIDTH - 72, STRIP - 34, 0.4, swings.size() + 0.6, low - room, high + room);
  }

  private void band(Drawing drawing, MeasureAt what, Frame frame) {
    pen.mean(what.measure(), what.at())
        .filter(g -> g.count() >= 3)
        .ifPresent(
            g -> {
              double half = g.halfWidthOfMean();
              double y1 = Math.max(frame.top(), frame.y(g.mean() + half));
              double y2 = Math.min(frame.bottom(), frame.y(g.mean() - half));
              drawing.box(frame.left(), y1, frame.width(), y2 - y1, Ink.BACK, "none", 0.14);
            });
  }
}
