package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelCurve;
import steadyturn.analysis.measure.Measure;

/** Turn and slide of the player and of the model, on an axis where the key positions agree. */
final class BesideTheModel {

  private static final int WIDTH = 480;
  private static final int STRIP = 190;

  private final Pen pen;

  private BesideTheModel(Pen pen) {
    this.pen = pen;
  }

  /** The picture; empty where the two share no curve. */
  static Optional<Html> draw(Pen pen, ModelComparison model) {
    List<ModelCurve> curves =
        model.curves().stream()
            .filter(
                c ->
                    c.id().equals(Measure.PELVIS_TURN.id())
                        || c.id().equals(Measure.PELVIS_SLIDE.id()))
            .toList();
    return curves.isEmpty() ? Optional.empty() : Optional.of(new BesideTheModel(pen).drawn(curves));
  }

  private Html drawn(List<ModelCurve> curves) {
    Drawing drawing =
        new Drawing(
            "model",
            WIDTH,
            curves.size() * STRIP + 30,
            pen.words().text("picture.model.title"),
            pen.words().text("picture.model.alt"));
    for (int i = 0; i < curves.size(); i++) {
      strip(drawing, curves.get(i), i * STRIP);
    }
    return drawing.done();
  }

  private void strip(Drawing drawing, ModelCurve curve, double top) {
    Measure measure =
        curve.id().equals(Measure.PELVIS_TURN.id()) ? Measure.PELVIS_TURN : Measure.PELVIS_SLIDE;
    double low = 0;
    double high = 0;
    for (int i = 0; i < curve.place().size(); i++) {
      double spread = Frame.larger(0, curve.spread().get(i));
      low = -Frame.larger(-low, -curve.model().get(i));
      low = -Frame.larger(-low, spread - curve.player().get(i));
      high = Frame.larger(high, curve.model().get(i));
      high = Frame.larger(high, curve.player().get(i) + spread);
    }
    double last = curve.place().get(curve.place().size() - 1);
    Frame frame = new Frame(58, top + 22, WIDTH - 72, STRIP - 44, 0, last, low - 5, high + 5);
    drawing.words(
        frame.left(),
        top + 14,
        "start",
        pen.words().text("measure." + measure.id()) + ", " + pen.amounts().unit(measure),
        "axis");
    frame.axisY(drawing, pen.words(), "", pen.amounts().factor(measure), 5);
    keyPosition(drawing, frame, MeanMotion.TOP, "picture.top");
    keyPosition(drawing, frame, MeanMotion.IMPACT, "picture.impact");
    drawing.path(spread(frame, curve, 1), Ink.DOWN, 1, "", 0.6);
    drawing.path(spread(frame, curve, -1), Ink.DOWN, 1, "", 0.6);
    drawing.path(points(frame, curve, curve.model()), Ink.DARK, 3, Ink.DASH_BACK, 1);
    drawing.path(points(frame, curve, curve.player()), Ink.DOWN, 3.5, "", 1);
  }

  private void keyPosition(Drawing drawing, Frame frame, double place, String key) {
    if (place <= frame.xHigh()) {
      double x = frame.x(place);
      drawing.line(x, frame.top(), x, frame.bottom(), Ink.QUIET, 0.8);
      drawing.words(x, frame.bottom() + 15, "middle", pen.words().text(key), "note");
    }
  }

  private static List<double[]> points(Frame frame, ModelCurve curve, List<Double> values) {
    List<double[]> out = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      out.add(new double[] {frame.x(curve.place().get(i)), frame.y(values.get(i))});
    }
    return out;
  }

  private static List<double[]> spread(Frame frame, ModelCurve curve, int side) {
    List<Double> edge = new ArrayList<>();
    for (int i = 0; i < curve.player().size(); i++) {
      edge.add(curve.player().get(i) + side * curve.spread().get(i));
    }
    return points(frame, curve, edge);
  }
}
