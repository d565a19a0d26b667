package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.fusion.wear.pelvis.LeverArm;

/**
 * The hips seen from above, to scale: hip line at address, top and impact, the path of its middle,
 * the point turned about, and feet drawn for orientation. The player faces up; the target lies to
 * the left of a right-handed player.
 */
final class HipsFromAbove {

  private static final int WIDTH = 480;
  private static final int HEIGHT = 350;
  private static final double MIDDLE_Y = 190;
  private static final double MARGIN_PX = 34;
  private static final double HALF_HIPS_MM = 86.5;

  /** A ring so uncertain that it reaches further is cut off, so that the hips stay readable. */
  private static final double DEEPEST_MM = 260;

  private final Pen pen;
  private final Drawing drawing;
  private final double pxPerMm;

  private HipsFromAbove(Pen pen) {
    this.pen = pen;
    this.pxPerMm = scaleThatFits();
    String alt =
        pen.text(
            "picture.above.alt" + pen.reader(),
            pen.amount(Measure.PELVIS_SLIDE, "top"),
            pen.amount(Measure.PELVIS_TURN, "top"),
            pen.amount(Measure.PELVIS_SLIDE, "impact"),
            pen.amount(Measure.PELVIS_TURN, "impact"));
    drawing = new Drawing("above", WIDTH, HEIGHT, pen.text("picture.above.title"), alt);
  }

  /** The picture; empty where the pelvis was not measured. */
  static Optional<Html> draw(Pen pen) {
    boolean known =
        pen.mean(Measure.PELVIS_TURN, "top").isPresent()
            && pen.mean(Measure.PELVIS_SLIDE, "top").isPresent();
    return known ? Optional.of(new HipsFromAbove(pen).drawn()) : Optional.empty();
  }

  private Html drawn() {
    surroundings();
    hips("address", Ink.QUIET, "");
    hips("top", Ink.BACK, Ink.DASH_BACK);
    hips("impact", Ink.DOWN, "");
    path();
    turnedAbout();
    scale();
    return drawing.done();
  }

  /** Everything drawn must lie on the paper, in true proportion. */
  private double scaleThatFits() {
    double reachMm = 170;
    for (String at : List.of("top", "impact")) {
      reachMm = Math.max(reachMm, Math.abs(value(Measure.PELVIS_SLIDE, at)) + halfHipsMm());
    }
    double depthMm = Math.min(DEEPEST_MM, depthMm());
    return Math.min((WIDTH / 2.0 - MARGIN_PX) / reachMm, (HEIGHT - MIDDLE_Y - MARGIN_PX) / depthMm);
  }

  /** How far behind mid-hip the ring about the point turned about reaches. */
  private double depthMm() {
    Optional<GroupSummary> across = pen.mean(Measure.PELVIS_CENTRE_ACROSS, "top");
    return pen.forPlayer() || across.isEmpty()
        ? halfHipsMm()
        : Math.abs(across.get().mean())
            + (across.get().count() < 3 ? 10 : across.get().halfWidthOfMean());
  }

  private double x(double alongMm) {
    return WIDTH / 2.0 - pen.leftIsTarget() * alongMm * pxPerMm;
  }

  private double y(double towardsBallMm) {
    return MIDDLE_Y - towardsBallMm * pxPerMm;
  }

  private void surroundings() {
    for (int side = -1; side <= 1; side += 2) {
      double at = x(side * 165);
      drawing.ellipse(at, y(40), 32 * pxPerMm, 86 * pxPerMm, "#f3f0e8", Ink.FAINT, 1);
    }
    double from = WIDTH / 2.0 - pen.leftIsTarget() * 150;
    double to = WIDTH / 2.0 - pen.leftIsTarget() * 205;
    double step = Math.signum(to - from);
    drawing.line(from, 36, to, 36, Ink.DARK, 2);
    drawing.filled(
        List.of(
            new double[] {to + 10 * step, 36},
            new double[] {to - 4 * step, 30},
            new double[] {to - 4 * step, 42}),
        Ink.DARK);
    drawing.words((from + to) / 2, 26, "middle", pen.text("picture.target"), "note");
    drawing.ellipse(WIDTH / 2.0, 22, 6, 6, "#ffffff", Ink.DARK, 1);
    drawing.words(WIDTH / 2.0 + 14, 27, "start", pen.text("picture.ball"), "note");
  }

  /** The line between the hip joints; a dot marks the hip on the target side. */
  private void hips(String at, String colour, String dash) {
    boolean address = at.equals("address");
    if (!address && pen.mean(Measure.PELVIS_TURN, at).isEmpty()) {
      return;
    }
    double turnRad = Math.toRadians(value(Measure.PELVIS_TURN, at));
    double along = value(Measure.PELVIS_SLIDE, at);
    double across = value(Measure.PELVIS_THRUST, at);
    double dAlong = halfHipsMm() * Math.cos(turnRad);
    double dAcross = -halfHipsMm() * Math.sin(turnRad);
    double leadX = x(along + dAlong);
    double leadY = y(across + dAcross);
    double trailX = x(along - dAlong);
    double trailY = y(across - dAcross);
    if (dash.isEmpty()) {
      drawing.line(trailX, trailY, leadX, leadY, colour, address ? 3 : 6);
    } else {
      drawing.dashed(trailX, trailY, leadX, leadY, colour, 6, dash);
    }
    drawing.dot(leadX, leadY, 7, colour);
    drawing.dot(x(along), y(across), 4, colour);
    String name = pen.text(pen.pictureKey(at));
    if (address) {
      drawing.words(x(0), y(0) + 22, "middle", name, "label");
    } else {
      String anchor = leadX < 70 ? "start" : leadX > WIDTH - 70 ? "end" : "middle";
      if (at.equals("top")) { // along its own line, away from that of impact
        anchor = pen.leftIsTarget() > 0 ? "start" : "end";
      }
      drawing.words(leadX, turnRad < 0 ? leadY - 14 : leadY + 24, anchor, name, "label");
    }
  }

  private double halfHipsMm() {
    OptionalDouble width = pen.sheet().player().pelvisWidthMm();
    return width.isPresent() ? LeverArm.hipHalfDistanceMm(width.getAsDouble()) : HALF_HIPS_MM;
  }

  /** The mean; 0 where it was not measured, and at address, from where everything is counted. */
  private double value(Measure measure, String at) {
    return pen.mean(measure, at).map(GroupSummary::mean).orElse(0.0);
  }

  private void path() {
    MeanMotion motion = new MeanMotion(pen.sheet().group());
    draw(motion, MeanMotion.TAKEAWAY, MeanMotion.TOP, Ink.BACK, "5 3");
    draw(motion, MeanMotion.TOP, MeanMotion.IMPACT, Ink.DOWN, "");
  }

  private void draw(MeanMotion motion, double from, double to, String colour, String dash) {
    List<double[]> points =
        motion.points(Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, from, to).stream()
            .map(p -> new double[] {x(p[0]), y(p[1])})
            .toList();
    drawing.path(points, colour, 2, dash, 1);
  }

  /** A cross in a ring whose half axes are the 95 % range of the mean. */
  private void turnedAbout() {
    Optional<GroupSummary> along = pen.mean(Measure.PELVIS_CENTRE_ALONG, "top");
    Optional<GroupSummary> across = pen.mean(Measure.PELVIS_CENTRE_ACROSS, "top");
    if (pen.forPlayer()
        || along.filter(g -> g.count() >= 3).isEmpty()
        || across.filter(g -> g.count() >= 3).isEmpty()) {
      return;
    }
    double cx = x(along.get().mean());
    double cy = y(across.get().mean());
    double rx = along.get().halfWidthOfMean() * pxPerMm;
    double ry = across.get().halfWidthOfMean() * pxPerMm;
    drawing.ellipse(cx, cy, rx, ry, "none", Ink.POINT, 1);
    drawing.line(cx - 6, cy - 6, cx + 6, cy + 6, Ink.POINT, 3);
    drawing.line(cx - 6, cy + 6, cx + 6, cy - 6, Ink.POINT, 3);
    drawing.words(cx + 12, cy + 16, "start", pen.text("picture.turned-about"), "note");
  }

  private void scale() {
    boolean inches = pen.units() == LengthUnits.IMPERIAL;
    double mm = inches ? 101.6 : 100;
    double from = 24;
    double to = from + mm * pxPerMm;
    drawing.line(from, HEIGHT - 20, to, HEIGHT - 20, Ink.DARK, 2);
    drawing.line(from, HEIGHT - 25, from, HEIGHT - 15, Ink.DARK, 2);
    drawing.line(to, HEIGHT - 25, to, HEIGHT - 15, Ink.DARK, 2);
    drawing.words(to + 8, HEIGHT - 15, "start", inches ? "4 in" : "10 cm", "note");
  }
}
