package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;
import steadyturn.cli.page.paper.Labels;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.fusion.wear.pelvis.LeverArm;

/**
 * The hinge: the hips from above as three bars (address, top, impact) and the pin they turn about.
 * Who turns: the bars fan out about a pin near the middle; who slides: they run side by side and
 * the pin flies off. What was measured is drawn solid, a goal as an outline.
 */
final class HingePicture {

  static final double HALF_HIPS_MM = 86.5;
  static final double WIDTH = 420;
  static final double HEIGHT = 262;

  /** Shown across the paper where nothing reaches farther. */
  static final double USUAL_MM = 440;

  /** Part of the paper above the middle of the hips at address. */
  private static final double ABOVE = 0.38;

  /** Free at the sides and below; twice that above, for the arrow to the target. */
  private static final double EDGE_MM = 14;

  /** Type of the teacher's picture, which is printed smaller than the player's. */
  private static final double SMALLER_PAPER = 1.3;

  final Drawing drawing;
  private final double middleX;
  private final double middleY;
  private final double pxPerMm;
  private final double halfHipsMm;
  final int leftIsTarget;
  final double weight;
  private final Labels labels;
  private double type = 1;

  /** A large one, on which all of these swings has room. */
  HingePicture(Drawing drawing, Pen pen) {
    this(drawing, WIDTH, HEIGHT, half(pen), pen.leftIsTarget(), USUAL_MM * stretch(pen));
  }

  HingePicture(
      Drawing drawing, double width, double height, double halfMm, int left, double mmAcross) {
    this.drawing = drawing;
    this.middleX = width / 2;
    this.middleY = ABOVE * height;
    this.pxPerMm = width / mmAcross;
    this.halfHipsMm = halfMm;
    this.leftIsTarget = left;
    this.weight = width > 300 ? 9 : 4;
    this.labels = new Labels(width, height);
  }

  /** The hips of these swings; empty where the pelvis was not measured. */
  static Optional<Html> now(Pen pen) {
    return now(pen, "hinge-now");
  }

  /** The same under another id, where a page has several. */
  static Optional<Html> now(Pen pen, String id) {
    return Hips.measured(pen).map(hips -> large(pen, hips, id, false));
  }

  /** Where the teacher's limits ask them to go. */
  static Optional<Html> goal(Pen pen) {
    return Hips.measured(pen)
        .map(hips -> large(pen, hips.goal(pen.sheet().teaching()), "hinge-goal", true));
  }

  static String told(Pen pen, Hips hips, boolean isGoal) {
    return pen.text(
        "hinge.alt",
        pen.amounts().plain(hips.top().turnDeg(), Measure.PELVIS_TURN),
        pen.about(hips.top().alongMm(), Measure.PELVIS_SLIDE),
        hips.pinMm().map(pin -> off(pen, pin, isGoal)).orElse("–"));
  }

  static double half(Pen pen) {
    OptionalDouble width = pen.sheet().player().pelvisWidthMm();
    return width.isPresent() ? LeverArm.hipHalfDistanceMm(width.getAsDouble()) : HALF_HIPS_MM;
  }

  private static Html large(Pen pen, Hips hips, String id, boolean outline) {
    Drawing drawing =
        new Drawing(
            id,
            (int) WIDTH,
            (int) HEIGHT,
            pen.text(outline ? "hinge.goal" : "hinge.now" + pen.reader()),
            told(pen, hips, outline));
    HingePicture picture = new HingePicture(drawing, pen);
    picture.type = pen.forPlayer() ? 1 : SMALLER_PAPER;
    picture.target(pen);
    picture.bars(hips, outline);
    picture.names(pen, hips);
    if (!outline) {
      drawing.path(picture.onPaper(hips.pinEdge(pen)), Ink.DARK, 1, "", 0.7);
    }
    picture.pin(hips, Optional.of(pen), outline);
    picture.scale(pen);
    return drawing.done();
  }

  /**
   * How much smaller than usual all must be; where the hips should go is drawn at the same scale.
   */
  private static double stretch(Pen pen) {
    double sides = USUAL_MM / 2 - EDGE_MM;
    double above = USUAL_MM / WIDTH * HEIGHT * ABOVE - 2 * EDGE_MM;
    double below = USUAL_MM / WIDTH * HEIGHT * (1 - ABOVE) - EDGE_MM;
    return Hips.measured(pen).stream()
        .flatMap(hips -> hips.corners(pen).stream())
        .mapToDouble(
            at -> Math.max(Math.abs(at[0]) / sides, Math.abs(at[1]) / (at[1] > 0 ? above : below)))
        .reduce(1, Math::max);
  }

  private double x(double alongMm) {
    return middleX - leftIsTarget * alongMm * pxPerMm;
  }

  private double y(double towardsBallMm) {
    return middleY - towardsBallMm * pxPerMm;
  }

  void target(Pen pen) {
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
    drawing.words(from + 10 * leftIsTarget, 25, anchor, pen.text("picture.target"), kind("note"));
    labels
        .avoid(from + 70 * type * leftIsTarget, 20, to, 20, 20)
        .avoid(10, HEIGHT - 14, 110 + 30 * type, HEIGHT - 14, 14);
  }

  void bars(Hips hips, boolean outline) {
    bar(new Hips.Line(0, 0, 0), Ink.QUIET, "", 0.55 * weight, false);
    drawing.path(onPaper(hips.path()), Ink.QUIET, 1.5, "2 3", 1);
    bar(hips.top(), Ink.BACK, outline ? "" : "14 4", weight, outline);
    hips.impact().ifPresent(line -> bar(line, Ink.DOWN, "", weight, outline));
  }

  private List<double[]> onPaper(List<double[]> path) {
    return path.stream().map(p -> new double[] {x(p[0]), y(p[1])}).toList();
  }

  void bar(Hips.Line line, String colour, String dash, double width, boolean outline) {
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
  double[] end(Hips.Line line, int side) {
    double[] endMm = line.endMm(side * halfHipsMm);
    return new double[] {x(endMm[0]), y(endMm[1])};
  }

  void names(Pen pen, Hips hips) {
    bars(hips).forEach(line -> avoid(line, weight));
    hips.pinMm().map(this::onPaper).ifPresent(p -> labels.avoid(p[0], p[1], p[0], y(0) + 80, 2));
    name(pen.text("hinge.top" + pen.reader()), hips.top(), "label", 16);
    hips.impact()
        .ifPresent(line -> name(pen.text("hinge.impact" + pen.reader()), line, "label", 16));
    name(pen.text("hinge.start" + pen.reader()), new Hips.Line(0, 0, 0), "note", 14);
  }

  static List<Hips.Line> bars(Hips hips) {
    return Stream.concat(Stream.of(new Hips.Line(0, 0, 0), hips.top()), hips.impact().stream())
        .toList();
  }

  void avoid(Hips.Line line, double width) {
    double[] lead = end(line, 1);
    double[] trail = end(line, -1);
    labels.avoid(lead[0], lead[1], trail[0], trail[1], width);
  }

  /** At an end of its bar, where there is room: beyond it, below or above. */
  private void name(String text, Hips.Line line, String kind, double typePx) {
    List<Labels.Spot> spots = new ArrayList<>();
    for (int side : line.turnDeg() > 0 ? new int[] {1, -1} : new int[] {-1, 1}) {
      double[] end = end(line, side);
      String outwards = anchor(-side);
      double out = side * leftIsTarget * -10;
      spots.add(new Labels.Spot(end[0], end[1] + 24, anchor(side)));
      spots.add(new Labels.Spot(end[0] + out, end[1] + 5, outwards));
      spots.add(new Labels.Spot(end[0], end[1] - 12, anchor(side)));
      spots.add(new Labels.Spot(end[0] + out, end[1] + 18, outwards));
      spots.add(new Labels.Spot(end[0] + out, end[1] - 8, outwards));
    }
    Labels.Spot spot = labels.place(text, type * typePx, spots);
    drawing.words(spot.x(), spot.y(), spot.anchor(), text, kind(kind));
  }

  private String kind(String kind) {
    return type > 1 ? kind + " large" : kind;
  }

  /** Words keep on the paper: from the end of a bar inwards. */
  private String anchor(int side) {
    return side * leftIsTarget > 0 ? "start" : "end";
  }

  /** The point turned about, and from where the middle of the hips was a line to it. */
  void pin(Hips hips, Optional<Pen> pen, boolean isGoal) {
    hips.pinMm()
        .ifPresent(
            pin -> {
              double px = onPaper(pin)[0];
              double py = onPaper(pin)[1];
              drawing.dashed(x(0), y(0), px, py, Ink.DARK, 0.2 * weight, "2 4");
              drawing.dot(px, py, 0.9 * weight, Ink.DARK);
              drawing.dot(px, py, 0.4 * weight, Ink.PAPER);
              pen.ifPresent(p -> pinName(p, off(p, pin, isGoal), px, py));
            });
  }

  /** Where a pin is drawn: in its place, or at the edge in its direction. */
  double[] onPaper(double[] pinMm) {
    double[] drawn = Hips.nearer(pinMm);
    return new double[] {x(drawn[0]), y(drawn[1])};
  }

  /**
   * Beside the pin where there is room; below the bars with a line to it where it lies among them.
   */
  private void pinName(Pen pen, String off, double px, double py) {
    String text = pen.text("hinge.pin" + pen.reader(), off);
    labels.avoid(px, py, px, py, 2 * weight).avoid(x(0), y(0), px, py, 2);
    double below = Math.max(py + 28, y(0) + 92);
    Labels.Spot spot =
        labels.place(
            text,
            14 * type,
            List.of(
                new Labels.Spot(px, py + 28, "middle"),
                new Labels.Spot(px, below, "middle"),
                new Labels.Spot(px, below + 18, "middle"),
                new Labels.Spot(px, below + 34, "middle"),
                new Labels.Spot(px + 14, below, "start"),
                new Labels.Spot(px - 14, below, "end"),
                new Labels.Spot(px - 14, py + 5, "end"),
                new Labels.Spot(px + 14, py + 5, "start")));
    if (spot.y() > py + 30) {
      drawing.line(px, py + weight, px, spot.y() - 14, Ink.QUIET, 1);
    }
    drawing.words(spot.x(), spot.y(), spot.anchor(), text, kind("note"));
  }

  /** How far off it lies: the mean of the swings, as in the table; of a goal as it is drawn. */
  private static String off(Pen pen, double[] pinMm, boolean isGoal) {
    double drawn = Math.hypot(pinMm[0], pinMm[1]);
    double mm =
        pen.mean(Measure.PELVIS_CENTRE_DISTANCE, "top")
            .filter(mean -> !isGoal)
            .map(GroupSummary::mean)
            .orElse(drawn);
    return pen.amounts().plain(mm, Measure.PELVIS_CENTRE_DISTANCE);
  }

  void scale(Pen pen) {
    boolean inches = pen.units() == LengthUnits.IMPERIAL;
    double from = 16;
    double to = from + (inches ? 101.6 : 100) * pxPerMm;
    drawing.line(from, HEIGHT - 14, to, HEIGHT - 14, Ink.DARK, 2);
    drawing.line(from, HEIGHT - 19, from, HEIGHT - 9, Ink.DARK, 2);
    drawing.line(to, HEIGHT - 19, to, HEIGHT - 9, Ink.DARK, 2);
    drawing.words(to + 8, HEIGHT - 9, "start", inches ? "4 in" : "10 cm", kind("note"));
  }
}
