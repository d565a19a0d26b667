package steadyturn.cli.page;

import java.util.Optional;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/**
 * What the arms did, to be laid beside where we want to go: how much of the bend of the wrists is
 * left with the front arm level, or the time of the swing with the moment the wrists let go.
 */
final class ArmPicture {

  private static final int WIDTH = 420;
  private static final int HEIGHT = 176;

  private ArmPicture() {}

  /** The bend that is left; empty where it was not measured. */
  static Optional<Html> bend(Pen pen, boolean goal) {
    return pen.mean(Measure.WRIST_KEPT, "lead-arm-level-down")
        .map(GroupSummary::mean)
        .map(now -> bend(pen, goal ? Math.max(now, limit(pen, "kept-well")) : now, goal));
  }

  private static Html bend(Pen pen, double keptPct, boolean goal) {
    String share = pen.amounts().plain(keptPct, Measure.WRIST_KEPT);
    Drawing drawing =
        new Drawing(id("bend", goal), WIDTH, HEIGHT, title(pen, goal), pen.text("bend.alt", share));
    int side = pen.leftIsTarget();
    double handX = WIDTH / 2.0 - side * 20;
    double handY = 150;
    double shoulderX = handX + side * 150;
    double angle = Math.toRadians(90 * Math.min(110, keptPct) / 100);
    double headX = handX - side * 110 * Math.cos(angle);
    double headY = handY - 110 * Math.sin(angle);
    drawing.line(shoulderX, handY, handX, handY, Ink.QUIET, 9);
    bar(drawing, handX, handY, headX, headY, goal);
    drawing.dot(handX, handY, 7, Ink.DARK);
    drawing.words(shoulderX, handY + 26, side > 0 ? "end" : "start", pen.text("bend.arm"), "note");
    drawing.words(
        handX - side * 20,
        handY + 26,
        side > 0 ? "end" : "start",
        pen.text("bend.left", share),
        "label");
    return drawing.done();
  }

  /** The time of the swing; empty where its tempo was not measured. */
  static Optional<Html> time(Pen pen, boolean goal) {
    Optional<Double> back = mean(pen, Measure.TEMPO_BACK);
    Optional<Double> down = mean(pen, Measure.TEMPO_DOWN);
    if (back.isEmpty() || down.isEmpty()) {
      return Optional.empty();
    }
    boolean hurried = back.get() < limit(pen, "back-hurried");
    double backS = goal && hurried ? limit(pen, "back-unhurried") : back.get();
    Optional<Double> letGoMs =
        mean(pen, Measure.WRIST_RELEASE)
            .map(now -> goal ? Math.min(now, limit(pen, "release-in-time")) : now);
    return Optional.of(time(pen, backS, down.get(), letGoMs, goal));
  }

  private static Html time(
      Pen pen, double backS, double downS, Optional<Double> letGoMs, boolean goal) {
    String back = pen.amounts().plain(backS, Measure.TEMPO_BACK);
    String letGo = letGoMs.map(ms -> pen.amounts().plain(ms, Measure.WRIST_RELEASE)).orElse("");
    String alt =
        letGo.isEmpty() ? pen.text("time.alt", back) : pen.text("time.alt.let-go", back, letGo);
    Drawing drawing = new Drawing(id("time", goal), WIDTH, HEIGHT, title(pen, goal), alt);
    double ball = WIDTH - 24;
    double pxPerS = (ball - 24) / 1.25;
    double top = ball - downS * pxPerS;
    double start = Math.max(16, top - backS * pxPerS);
    bar(drawing, start, 90, top, 90, Ink.BACK, goal);
    bar(drawing, top, 90, ball, 90, Ink.DOWN, goal);
    drawing.words(start, 70, "start", pen.text("time.back", back), "label");
    drawing.words(top, 46, "start", pen.text("time.down"), "label");
    drawing.line(top + 4, 52, top + 4, 84, Ink.QUIET, 1);
    drawing.dot(ball, 90, 8, Ink.PAPER);
    drawing.ellipse(ball, 90, 8, 8, "none", Ink.DARK, 1);
    letGoMs.ifPresent(
        ms -> {
          double x = ball - ms / 1000 * pxPerS;
          drawing.line(x, 76, x, 122, Ink.DARK, 3);
          drawing.words(x, 142, "end", pen.text("time.let-go"), "note");
          drawing.words(x, 160, "end", pen.text("time.before", letGo), "note");
        });
    return drawing.done();
  }

  private static void bar(
      Drawing drawing, double x1, double y1, double x2, double y2, String colour, boolean goal) {
    drawing.line(x1, y1, x2, y2, colour, 9);
    if (goal) {
      drawing.line(x1, y1, x2, y2, Ink.PAPER, 5);
    }
  }

  private static void bar(
      Drawing drawing, double x1, double y1, double x2, double y2, boolean goal) {
    bar(drawing, x1, y1, x2, y2, Ink.DOWN, goal);
  }

  private static String id(String what, boolean goal) {
    return what + (goal ? "-goal" : "-now");
  }

  private static String title(Pen pen, boolean goal) {
    return pen.text(goal ? "hinge.goal" : "hinge.now" + pen.reader());
  }

  private static Optional<Double> mean(Pen pen, Measure measure) {
    return pen.mean(measure, "").map(GroupSummary::mean);
  }

  private static double limit(Pen pen, String name) {
    Teaching teaching = pen.sheet().teaching();
    return teaching.limit(name).value();
  }
}
