package steadyturn.cli.page;

import java.util.Optional;
import java.util.Set;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/**
 * Turn over slide, from takeaway to impact: straight down and up is turn only, sideways is slide.
 * The target lies on the same side as in the picture from above.
 */
final class TurnAgainstSlide {

  private static final int WIDTH = 480;
  private static final int HEIGHT = 350;
  private static final Set<String> AIM =
      Set.of("turn-full", "turn-too-far", "slide-small", "slide-to-target");

  private final Pen pen;
  private final MeanMotion motion;
  private final Frame frame;

  private TurnAgainstSlide(Pen pen, MeanMotion motion) {
    this.pen = pen;
    this.motion = motion;
    double reachMm = 60;
    double downDeg = -60;
    double upDeg = 30;
    for (SwingResult swing : pen.sheet().swings()) {
      for (double[] p : MeanMotion.points(swing, Measure.PELVIS_SLIDE, Measure.PELVIS_TURN)) {
        reachMm = Frame.larger(reachMm, Math.abs(p[0]) + 15);
        downDeg = -Frame.larger(-downDeg, 5 - p[1]);
        upDeg = Frame.larger(upDeg, p[1] + 5);
      }
    }
    int side = -pen.leftIsTarget();
    frame =
        new Frame(58, 14, WIDTH - 72, HEIGHT - 60, -side * reachMm, side * reachMm, downDeg, upDeg);
  }

  /** The picture; empty where no swing has the curves. */
  static Optional<Html> draw(Pen pen) {
    if (pen.sheet().swings().isEmpty()) {
      return Optional.empty();
    }
    MeanMotion motion = new MeanMotion(pen.sheet().group());
    return motion.has(Measure.PELVIS_SLIDE) && motion.has(Measure.PELVIS_TURN)
        ? Optional.of(new TurnAgainstSlide(pen, motion).drawn())
        : Optional.empty();
  }

  private Html drawn() {
    String alt =
        pen.text(
            "picture.path.alt" + pen.reader(),
            pen.amount(Measure.PELVIS_TURN, "top"),
            pen.amount(Measure.PELVIS_TURN, "impact"));
    Drawing drawing = new Drawing("path", WIDTH, HEIGHT, pen.text("picture.path.title"), alt);
    String side = pen.leftIsTarget() > 0 ? "picture.path.x.left" : "picture.path.x";
    String x = pen.text(side + pen.reader(), pen.unit(Measure.PELVIS_SLIDE));
    frame.axisX(drawing, pen.words(), x, pen.amounts().factor(Measure.PELVIS_SLIDE), 6);
    frame.axisY(drawing, pen.words(), pen.text("picture.path.y" + pen.reader()), 1, 7);
    aim(drawing);
    for (SwingResult swing : pen.sheet().swings()) {
      var points = MeanMotion.points(swing, Measure.PELVIS_SLIDE, Measure.PELVIS_TURN);
      drawing.path(frame.onPaper(points), Ink.QUIET, 0.8, "", 0.45);
    }
    mean(drawing, MeanMotion.TAKEAWAY, MeanMotion.TOP, Ink.BACK, Ink.DASH_BACK);
    mean(drawing, MeanMotion.TOP, MeanMotion.IMPACT, Ink.DOWN, "");
    point(drawing, 0, 0, Ink.QUIET, "address");
    keyPosition(drawing, "top", Ink.BACK);
    keyPosition(drawing, "impact", Ink.DOWN);
    return drawing.done();
  }

  private void mean(Drawing drawing, double from, double to, String colour, String dash) {
    var points = motion.points(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN, from, to);
    drawing.path(frame.onPaper(points), colour, 4, dash, 1);
  }

  private void keyPosition(Drawing drawing, String at, String colour) {
    Optional<GroupSummary> slide = pen.mean(Measure.PELVIS_SLIDE, at);
    Optional<GroupSummary> turn = pen.mean(Measure.PELVIS_TURN, at);
    if (slide.isPresent() && turn.isPresent()) {
      point(drawing, slide.get().mean(), turn.get().mean(), colour, at);
    }
  }

  private void point(Drawing drawing, double slideMm, double turnDeg, String colour, String at) {
    String name = pen.text(pen.pictureKey(at));
    double x = frame.x(slideMm);
    double y = frame.y(turnDeg);
    drawing.dot(x, y, 7, colour);
    if (turnDeg < 0) {
      double inside = Math.max(frame.left() + 70, Math.min(frame.right() - 70, x));
      drawing.words(inside, y + 25, "middle", name, "label");
    } else {
      boolean left = x < frame.left() + 0.75 * frame.width();
      drawing.words(left ? x + 12 : x - 12, y - 6, left ? "start" : "end", name, "label");
    }
  }

  /** The field the top should lie in, from the teacher's limits, where they are set. */
  private void aim(Drawing drawing) {
    Teaching teaching = pen.sheet().teaching();
    if (!teaching.limits().keySet().containsAll(AIM)) {
      return;
    }
    double x1 = frame.x(teaching.limit("slide-small").value());
    double x2 = frame.x(teaching.limit("slide-to-target").value());
    double y1 = frame.y(teaching.limit("turn-full").value());
    double y2 = Math.min(frame.bottom(), frame.y(teaching.limit("turn-too-far").value()));
    drawing.wanted(Math.min(x1, x2), y1, Math.abs(x2 - x1), y2 - y1);
    String name = pen.text("picture.path.aim" + pen.reader());
    boolean opensRight = x1 > x2; // beside the field, where no downswing passes
    drawing.words(opensRight ? x1 + 6 : x1 - 6, y2 - 6, opensRight ? "start" : "end", name, "note");
  }
}
