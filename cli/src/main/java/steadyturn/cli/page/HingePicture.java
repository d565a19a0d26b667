package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.fusion.wear.pelvis.LeverArm;

/**
 * The hinge: the hips from above as three bars (address, top, impact) and the pin they turn about.
 * Who turns: the bars fan out about a pin near the middle; who slides: they run side by side and
 * the pin flies off. What was measured is drawn solid, a goal as an outline.
 */
final class HingePicture {

  static final double HALF_HIPS_MM = 86.5;

  private static final double WIDTH = 420;
  private static final double HEIGHT = 262;
  private static final double SMALL_WIDTH = 150;
  private static final double SMALL_HEIGHT = 90;

  /** So far a pin is drawn in its place; beyond it stands at the edge with an arrow, mm. */
  private static final double DEEPEST_MM = 150;

  private final Drawing drawing;
  private final double middleX;
  private final double middleY;
  private final double pxPerMm;
  private final double halfHipsMm;
  private final int leftIsTarget;
  private final double weight;

  private HingePicture(
      Drawing drawing, double width, double height, double halfHipsMm, int leftIsTarget) {
    this.drawing = drawing;
    this.middleX = width / 2;
    this.middleY = 0.38 * height;
    this.pxPerMm = width / 440;
    this.halfHipsMm = halfHipsMm;
    this.leftIsTarget = leftIsTarget;
    this.weight = width > 300 ? 9 : 4;
  }

  /** The hips of these swings; empty where the pelvis was not measured. */
  static Optional<Html> now(Pen pen) {
    return Hips.measured(pen).map(hips -> large(pen, hips, "hinge-now", false));
  }

  /** Where the teacher's limits ask them to go. */
  static Optional<Html> goal(Pen pen) {
    return Hips.measured(pen)
        .map(hips -> large(pen, hips.goal(pen.sheet().teaching()), "hinge-goal", true));
  }

  private static Html large(Pen pen, Hips hips, String id, boolean outline) {
    Amounts amounts = pen.amounts();
    String alt =
        pen.text(
            "hinge.alt",
            amounts.plain(hips.top().turnDeg(), Measure.PELVIS_TURN),
            pen.about(hips.top().alongMm(), Measure.PELVIS_SLIDE),
            hips.pinMm().map(pin -> off(pen, pin)).orElse("–"));
    Drawing drawing =
        new Drawing(
            id,
            (int) WIDTH,
            (int) HEIGHT,
            pen.text(outline ? "hinge.goal" : "hinge.now" + pen.reader()),
            alt);
    OptionalDouble width = pen.sheet().player().pelvisWidthMm();
    double half =
        width.isPresent() ? LeverArm.hipHalfDistanceMm(width.getAsDouble()) : HALF_HIPS_MM;
    HingePicture picture = new HingePicture(drawing, WIDTH, HEIGHT, half, pen.leftIsTarget());
    picture.target(pen);
    picture.bars(hips, outline);
    picture.names(pen, hips);
    picture.pin(hips, Optional.of(pen));
    picture.scale(pen);
    return drawing.done();
  }

  /** The two small examples that stand beside every hinge. */
  static Html example(Pen pen, boolean turns) {
    String name = pen.text(turns ? "hinge.turns" : "hinge.slides");
    Drawing drawing =
        new Drawing(
            turns ? "example-turns" : "example-slides",
            (int) SMALL_WIDTH,
            (int) SMALL_HEIGHT,
            name,
            pen.text(turns ? "hinge.turns.alt" : "hinge.slides.alt"));
    HingePicture picture =
        new HingePicture(drawing, SMALL_WIDTH, SMALL_HEIGHT, HALF_HIPS_MM, pen.leftIsTarget());
    Hips hips = turns ? Hips.TURNS : Hips.SLIDES;
    picture.bars(hips, false);
    picture.pin(hips, Optional.empty());
    return drawing.done();
  }

  private double x(double alongMm) {
    return middleX - leftIsTarget * alongMm * pxPerMm;
  }

  private double y(double towardsBallMm) {
    return middleY - towardsBallMm * pxPerMm;
  }

  private void target(Pen pen) {
    double from = middleX - leftIsTarget * 140;
    double to = middleX - leftIsTarget * 190;
    double step = Math.signum(to - from);
    drawing.line(from, 20, to, 20, Ink.DARK, 2);
    drawing.filled(
        List.of(
            new double[] {to + 10 * step, 20},
            new double[] {to - 4 * step, 14},
            new double[] {to - 4 * step, 26}),
        Ink.DARK);
    String anchor = leftIsTarget > 0 ? "start" : "end";
    drawing.words(from + 10 * leftIsTarget, 25, anchor, pen.text("picture.target"), "note");
  }

  private void bars(Hips hips, boolean outline) {
    bar(new Hips.Line(0, 0, 0), Ink.QUIET, "", 0.55 * weight, false);
    drawing.path(onPaper(hips.path()), Ink.QUIET, 1.5, "2 3", 1);
    bar(hips.top(), Ink.BACK, outline ? "" : "14 4", weight, outline);
    hips.impact().ifPresent(line -> bar(line, Ink.DOWN, "", weight, outline));
  }

  private List<double[]> onPaper(List<double[]> path) {
    return path.stream().map(p -> new double[] {x(p[0]), y(p[1])}).toList();
  }

  private void bar(Hips.Line line, String colour, String dash, double width, boolean outline) {
    double[] lead = end(line, 1);
    double[] trail = end(line, -1);
    if (dash.isEmpty()) {
      drawing.line(trail[0], trail[1], lead[0], lead[1], colour, width);
    } else {
      drawing.dashed(trail[0], trail[1], lead[0], lead[1], colour, width, dash);
    }
    if (outline) {
      drawing.line(trail[0], trail[1], lead[0], lead[1], Ink.PAPER, width - 4);
    }
    drawing.dot(x(line.alongMm()), y(line.acrossMm()), 0.4 * weight, colour);
  }

  /** The hip on the target side, or with -1 the other. */
  private double[] end(Hips.Line line, int side) {
    double turn = Math.toRadians(line.turnDeg());
    return new double[] {
      x(line.alongMm() + side * halfHipsMm * Math.cos(turn)),
      y(line.acrossMm() - side * halfHipsMm * Math.sin(turn))
    };
  }

  private void names(Pen pen, Hips hips) {
    double[] start = end(new Hips.Line(0, 0, 0), -1);
    String name = pen.text("hinge.start" + pen.reader());
    drawing.words(start[0] + 8 * leftIsTarget, start[1] - 4, anchor(1), name, "note");
    double[] top = end(hips.top(), -1);
    drawing.words(top[0], top[1] + 24, anchor(-1), pen.text("hinge.top" + pen.reader()), "label");
    hips.impact()
        .ifPresent(
            line -> {
              double[] lead = end(line, 1);
              String ball = pen.text("hinge.impact" + pen.reader());
              drawing.words(lead[0], lead[1] + 24, anchor(1), ball, "label");
            });
  }

  /** Words keep on the paper: from the end of a bar inwards. */
  private String anchor(int side) {
    return side * leftIsTarget > 0 ? "start" : "end";
  }

  /** The point turned about, and from where the middle of the hips was a line to it. */
  private void pin(Hips hips, Optional<Pen> pen) {
    hips.pinMm()
        .ifPresent(
            pin -> {
              double far = Math.hypot(pin[0], pin[1]);
              double part = Math.min(1, DEEPEST_MM / far);
              double px = x(part * pin[0]);
              double py = y(part * pin[1]);
              drawing.dashed(x(0), y(0), px, py, Ink.DARK, 0.2 * weight, "2 4");
              drawing.dot(px, py, 0.9 * weight, Ink.DARK);
              drawing.dot(px, py, 0.4 * weight, Ink.PAPER);
              pen.ifPresent(p -> pinName(p, pin, px, py));
            });
  }

  /** Below the pin; below the bars with a line to it where it lies among them. */
  private void pinName(Pen pen, double[] pin, double px, double py) {
    double below = Math.max(py + 28, y(0) + 92);
    if (below > py + 28) {
      drawing.line(px, py + weight, px, below - 14, Ink.QUIET, 1);
    }
    drawing.words(px, below, "middle", pen.text("hinge.pin" + pen.reader(), off(pen, pin)), "note");
  }

  private static String off(Pen pen, double[] pinMm) {
    return pen.amounts().plain(Math.hypot(pinMm[0], pinMm[1]), Measure.PELVIS_CENTRE_DISTANCE);
  }

  private void scale(Pen pen) {
    boolean inches = pen.units() == LengthUnits.IMPERIAL;
    double from = 16;
    double to = from + (inches ? 101.6 : 100) * pxPerMm;
    drawing.line(from, HEIGHT - 14, to, HEIGHT - 14, Ink.DARK, 2);
    drawing.line(from, HEIGHT - 19, from, HEIGHT - 9, Ink.DARK, 2);
    drawing.line(to, HEIGHT - 19, to, HEIGHT - 9, Ink.DARK, 2);
    drawing.words(to + 8, HEIGHT - 9, "start", inches ? "4 in" : "10 cm", "note");
  }
}
