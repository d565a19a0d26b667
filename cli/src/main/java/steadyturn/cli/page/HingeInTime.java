package steadyturn.cli.page;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;

/** The hinge over time: two lessons over each other, and one swing as it moves. */
final class HingeInTime {

  private HingeInTime() {}

  /** The hips of two lessons over each other: the first as an outline, the last solid. */
  static Optional<Html> over(Pen first, Pen last) {
    Optional<Hips> was = Hips.measured(first);
    Optional<Hips> is = Hips.measured(last);
    if (was.isEmpty() || is.isEmpty()) {
      return Optional.empty();
    }
    String alt =
        last.text(
            "progress.hips.alt",
            HingePicture.told(first, was.get(), false),
            HingePicture.told(last, is.get(), false));
    Drawing drawing =
        new Drawing(
            "hinge-over",
            (int) HingePicture.WIDTH,
            (int) HingePicture.HEIGHT,
            last.text("progress.hips.title"),
            alt);
    HingePicture picture = new HingePicture(drawing, last);
    picture.target(last);
    was(picture, was.get());
    HingePicture.bars(was.get()).forEach(line -> picture.avoid(line, picture.weight));
    picture.bars(is.get(), false);
    picture.names(last, is.get());
    picture.pin(is.get(), Optional.of(last), false);
    picture.scale(last);
    return Optional.of(drawing.done());
  }

  /** What was, in grey and hollow: never taken for what is. */
  private static void was(HingePicture picture, Hips hips) {
    hollow(picture, hips.top(), "14 4");
    hips.impact().ifPresent(line -> hollow(picture, line, ""));
    hips.pinMm()
        .ifPresent(
            pin -> {
              picture.drawing.dot(
                  picture.onPaper(pin)[0],
                  picture.onPaper(pin)[1],
                  0.9 * picture.weight,
                  Ink.QUIET);
              picture.drawing.dot(
                  picture.onPaper(pin)[0],
                  picture.onPaper(pin)[1],
                  0.6 * picture.weight,
                  Ink.PAPER);
            });
  }

  private static void hollow(HingePicture picture, Hips.Line line, String dash) {
    double[] lead = picture.end(line, 1);
    double[] trail = picture.end(line, -1);
    if (dash.isEmpty()) {
      picture.drawing.line(trail[0], trail[1], lead[0], lead[1], Ink.QUIET, picture.weight);
    } else {
      picture.drawing.dashed(trail[0], trail[1], lead[0], lead[1], Ink.QUIET, picture.weight, dash);
    }
    picture.drawing.line(trail[0], trail[1], lead[0], lead[1], Ink.PAPER, picture.weight - 3);
  }

  /**
   * The same as a picture that moves when the reader starts it: the last line in it is the bar, its
   * ends over time stand beside the picture. Without a script it stays hidden; the still pictures
   * tell the same. Empty without curves.
   */
  static Optional<Html> moving(Pen pen) {
    List<double[]> way = new MeanMotion(pen.sheet().group()).hips();
    if (way.size() < 3) {
      return Optional.empty();
    }
    String name = pen.text("replay.title");
    Drawing drawing =
        new Drawing("replay", (int) HingePicture.WIDTH, 200, name, pen.text("replay.alt"));
    HingePicture picture = new HingePicture(drawing, pen);
    picture.target(pen);
    picture.bar(new Hips.Line(0, 0, 0), Ink.QUIET, "", 0.55 * picture.weight, false);
    double[] from = picture.end(new Hips.Line(0, 0, 0), -1);
    double[] to = picture.end(new Hips.Line(0, 0, 0), 1);
    drawing.line(from[0], from[1], to[0], to[1], Ink.DOWN, picture.weight);
    String frames =
        way.stream().map(at -> frame(picture, pen, at)).collect(Collectors.joining(";"));
    Html html = new Html().open("div", "class", "replay", "hidden", "", "data-frames", frames);
    html.part(drawing.done()).open("p");
    html.element("button", pen.text("replay.real"), "type", "button", "data-pace", "1").words(" ");
    html.element("button", pen.text("replay.slow"), "type", "button", "data-pace", "0.25");
    return Optional.of(html.close("p", "div").script("replay.js"));
  }

  /** Time in ms and the two ends of the bar, px. */
  private static String frame(HingePicture picture, Pen pen, double[] at) {
    double backS = pen.mean(Measure.TEMPO_BACK, "").map(GroupSummary::mean).orElse(0.8);
    double downS = pen.mean(Measure.TEMPO_DOWN, "").map(GroupSummary::mean).orElse(0.3);
    double onWayDown = (at[0] - MeanMotion.TOP) / (MeanMotion.IMPACT - MeanMotion.TOP);
    double timeS =
        at[0] <= MeanMotion.TOP ? backS * at[0] / MeanMotion.TOP : backS + downS * onWayDown;
    Hips.Line line = new Hips.Line(at[1], at[2], at[3]);
    double[] trail = picture.end(line, -1);
    double[] lead = picture.end(line, 1);
    return String.format(
        Locale.ROOT,
        "%.0f,%.1f,%.1f,%.1f,%.1f",
        1000 * timeS,
        trail[0],
        trail[1],
        lead[0],
        lead[1]);
  }
}
