package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/** Wrist cock over the time before impact, with the release and its range. */
record CockOnTheWayDown(Pen pen, List<SwingResult> swings, double fromMs) {

  private static final int WIDTH = 480;
  private static final int HEIGHT = 300;
  private static final double STEP_MS = 5;

  /** The picture; empty where the wrist was not measured. */
  static Optional<Html> draw(Pen pen) {
    List<SwingResult> withCock =
        pen.sheet().swings().stream()
            .filter(s -> MeanMotion.curve(s, Measure.WRIST_COCK).isPresent())
            .filter(s -> Double.isFinite(s.timeS(SwingEvent.IMPACT)))
            .toList();
    if (withCock.isEmpty()) {
      return Optional.empty();
    }
    double longest = 200;
    for (SwingResult swing : withCock) {
      double downMs = 1e3 * (swing.timeS(SwingEvent.IMPACT) - swing.timeS(SwingEvent.TOP));
      longest = Frame.larger(longest, downMs);
    }
    double fromMs = Math.ceil(longest / 50) * 50;
    return Optional.of(new CockOnTheWayDown(pen, withCock, fromMs).drawn());
  }

  private Html drawn() {
    List<List<double[]>> lines = swings.stream().map(this::line).toList();
    double low = 0;
    double high = 30;
    for (double[] p : lines.stream().flatMap(List::stream).toList()) {
      low = -Frame.larger(-low, 5 - p[1]);
      high = Frame.larger(high, p[1] + 8);
    }
    Frame frame = new Frame(58, 14, WIDTH - 72, HEIGHT - 60, fromMs, 0, low, high);
    String alt = pen.text("picture.cock.alt", pen.amount(Measure.WRIST_RELEASE, ""));
    Drawing drawing = new Drawing("cock", WIDTH, HEIGHT, pen.text("picture.cock.title"), alt);
    frame.axisX(drawing, pen.words(), pen.text("picture.cock.x"), 1, 7);
    frame.axisY(drawing, pen.words(), pen.text("picture.cock.y"), 1, 6);
    lines.forEach(line -> drawing.path(frame.onPaper(line), Ink.QUIET, 0.8, "", 0.45));
    drawing.path(frame.onPaper(mean(lines)), Ink.DOWN, 4, "", 1);
    release(drawing, frame);
    return drawing.done();
  }

  /** Cock of one swing from its top on, every 5 ms before impact. */
  private List<double[]> line(SwingResult swing) {
    Curve cock = MeanMotion.curve(swing, Measure.WRIST_COCK).orElseThrow();
    double impactS = swing.timeS(SwingEvent.IMPACT);
    List<double[]> points = new ArrayList<>();
    int k = 0;
    for (double ms = fromMs; ms >= 0; ms -= STEP_MS) {
      double t = impactS - ms / 1e3;
      while (k < cock.timeS().size() - 1 && cock.timeS().get(k + 1) < t) {
        k++;
      }
      if (k < cock.timeS().size() - 1 && cock.timeS().get(k) <= t) {
        double t0 = cock.timeS().get(k);
        double part = (t - t0) / (cock.timeS().get(k + 1) - t0);
        double value = (1 - part) * cock.value().get(k) + part * cock.value().get(k + 1);
        points.add(new double[] {ms, value});
      }
    }
    return points;
  }

  private static List<double[]> mean(List<List<double[]>> lines) {
    List<double[]> out = new ArrayList<>();
    int shortest = lines.stream().mapToInt(List::size).min().orElse(0);
    for (int i = 1; i <= shortest; i++) {
      double ms = 0;
      double value = 0;
      for (List<double[]> line : lines) {
        double[] p = line.get(line.size() - i);
        ms += p[0] / lines.size();
        value += p[1] / lines.size();
      }
      out.add(0, new double[] {ms, value});
    }
    return out;
  }

  private void release(Drawing drawing, Frame frame) {
    Optional<GroupSummary> release =
        pen.mean(Measure.WRIST_RELEASE, "").filter(g -> g.count() >= 3);
    if (release.isEmpty()) {
      return;
    }
    double half = release.get().halfWidthOfMean();
    double x1 = frame.x(release.get().mean() + half);
    double x2 = frame.x(release.get().mean() - half);
    drawing.box(x1, frame.top(), x2 - x1, frame.height(), "none", Ink.DARK, 0.6);
    double x = frame.x(release.get().mean());
    drawing.line(x, frame.top(), x, frame.bottom(), Ink.DARK, 2);
    drawing.words(x - 8, frame.bottom() - 10, "end", pen.text("picture.cock.release"), "label");
  }
}
