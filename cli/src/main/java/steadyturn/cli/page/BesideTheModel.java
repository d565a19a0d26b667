package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelCurve;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/** Turn and slide of the player and of the model, on an axis where the key positions agree. */
record BesideTheModel(Pen pen, Drawing drawing) {

  private static final int WIDTH = 480;
  private static final int STRIP = 190;
  private static final List<Measure> SHOWN = List.of(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE);

  /** The picture; empty where the two share no curve. */
  static Optional<Html> draw(Pen pen, ModelComparison model) {
    List<ModelCurve> curves =
        model.curves().stream().filter(curve -> measure(curve).isPresent()).toList();
    if (curves.isEmpty()) {
      return Optional.empty();
    }
    int height = curves.size() * STRIP + 30;
    String title = pen.text("picture.model.title");
    Drawing drawing = new Drawing("model", WIDTH, height, title, pen.text("picture.model.alt"));
    for (int i = 0; i < curves.size(); i++) {
      new BesideTheModel(pen, drawing).strip(curves.get(i), i * STRIP);
    }
    return Optional.of(drawing.done());
  }

  private static Optional<Measure> measure(ModelCurve curve) {
    return SHOWN.stream().filter(measure -> measure.id().equals(curve.id())).findFirst();
  }

  private void strip(ModelCurve curve, double top) {
    Measure measure = measure(curve).orElseThrow();
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
    String name = pen.text("measure." + measure.id()) + ", " + pen.unit(measure);
    drawing.words(frame.left(), top + 14, "start", name, "axis");
    frame.axisY(drawing, pen.words(), "", pen.amounts().factor(measure), 5);
    keyPosition(frame, MeanMotion.TOP, "picture.top");
    keyPosition(frame, MeanMotion.IMPACT, "picture.impact");
    drawing.path(spread(frame, curve, 1), Ink.DOWN, 1, "", 0.6);
    drawing.path(spread(frame, curve, -1), Ink.DOWN, 1, "", 0.6);
    drawing.path(points(frame, curve, curve.model()), Ink.DARK, 3, Ink.DASH_BACK, 1);
    drawing.path(points(frame, curve, curve.player()), Ink.DOWN, 3.5, "", 1);
  }

  private void keyPosition(Frame frame, double place, String key) {
    if (place <= frame.xHigh()) {
      double x = frame.x(place);
      drawing.line(x, frame.top(), x, frame.bottom(), Ink.QUIET, 0.8);
      drawing.words(x, frame.bottom() + 15, "middle", pen.text(key), "note");
    }
  }

  private static List<double[]> points(Frame frame, ModelCurve curve, List<Double> values) {
    return points(frame, curve, values::get);
  }

  private static List<double[]> spread(Frame frame, ModelCurve curve, int side) {
    return points(frame, curve, i -> curve.player().get(i) + side * curve.spread().get(i));
  }

  private static List<double[]> points(Frame frame, ModelCurve curve, IntToDoubleFunction value) {
    return IntStream.range(0, curve.place().size())
        .mapToObj(
            i -> new double[] {frame.x(curve.place().get(i)), frame.y(value.applyAsDouble(i))})
        .toList();
  }
}
