package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;
import steadyturn.cli.words.Words;

/** One measure from lesson to lesson: means with their intervals, and what the teacher wants. */
record LessonLine(MeasureAt what, List<GroupSummary> means, Optional<GoodBand> wanted) {

  private static final int WIDTH = 330;
  private static final int HEIGHT = 190;

  static LessonLine of(PlayerProgress progress, MeasureAt what, Optional<GoodBand> wanted) {
    return new LessonLine(
        what, progress.steps().stream().map(s -> PlayerProgress.mean(s, what)).toList(), wanted);
  }

  private static double half(GroupSummary mean) {
    return mean.count() < GroupComparison.FEWEST_SWINGS ? 0 : mean.halfWidthOfMean();
  }

  Html draw(String name, String alt, Amounts amounts, Words words) {
    Drawing drawing = new Drawing("line-" + id(), WIDTH, HEIGHT, name, alt);
    Frame frame = frame();
    frame.axisY(drawing, words, amounts.unit(what.measure()), amounts.factor(what.measure()), 4);
    wanted.ifPresent(
        band -> {
          double top = frame.y(Math.min(frame.yHigh(), band.high()));
          double bottom = frame.y(Math.max(frame.yLow(), band.low()));
          drawing.wanted(frame.left(), top, frame.width(), bottom - top);
        });
    List<double[]> line = new ArrayList<>();
    for (int k = 0; k < means.size(); k++) {
      GroupSummary mean = means.get(k);
      double x = frame.x(k + 0.5);
      drawing.words(x, frame.bottom() + 18, "middle", Integer.toString(k + 1), "tick");
      if (mean.count() > 0) {
        double half = half(mean);
        drawing.line(
            x, frame.y(mean.mean() - half), x, frame.y(mean.mean() + half), Ink.QUIET, 1.6);
        line.add(new double[] {x, frame.y(mean.mean())});
      }
    }
    drawing.path(line, Ink.BACK, 2, "", 1);
    line.forEach(at -> drawing.dot(at[0], at[1], 5, Ink.BACK));
    return drawing.done();
  }

  private String id() {
    return what.measure().id().replace('.', '-') + (what.at().isEmpty() ? "" : "-" + what.at());
  }

  private Frame frame() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (GroupSummary mean : means) {
      if (mean.count() > 0) {
        low = Math.min(low, mean.mean() - half(mean));
        high = Math.max(high, mean.mean() + half(mean));
      }
    }
    for (double edge : wanted.map(b -> new double[] {b.low(), b.high()}).orElse(new double[0])) {
      if (Double.isFinite(edge)) {
        low = Math.min(low, edge);
        high = Math.max(high, edge);
      }
    }
    double room = Math.max(0.08 * (high - low), 1e-3);
    return new Frame(56, 8, WIDTH - 64, HEIGHT - 36, 0, means.size(), low - room, high + room);
  }
}
