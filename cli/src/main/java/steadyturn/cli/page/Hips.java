package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.coach.MeanMotion;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.pelvis.TurnCentre;

/**
 * Where the hips stand at the top and at impact, counted from address: what the hinge is drawn of.
 *
 * @param path places of the middle, towards the target and towards the ball, mm; empty for a goal
 */
record Hips(Line top, Optional<Line> impact, List<double[]> path) {

  /** Under this turn the point turned about is too far off to be drawn, deg. */
  private static final double LEAST_TURN_DEG = 10;

  /** Less than this cannot be seen in a picture; our choice. */
  private static final double LEAST_MM = 5;

  private static final double LEAST_DEG = 2;
  private static final int CORNERS = 32;

  /** An edge that reaches farther is not drawn: it would not be on the paper. */
  private static final double FARTHEST_MM = 400;

  /** So far a point turned about is drawn in its place; beyond, in its direction, mm. */
  private static final double DEEPEST_MM = 150;

  /** One hip line: its turn, and the place of its middle. */
  record Line(double turnDeg, double alongMm, double acrossMm) {

    /** Where its end lies that is so far towards the target from its middle: along, across, mm. */
    double[] endMm(double halfMm) {
      double turn = Math.toRadians(turnDeg);
      return new double[] {alongMm + halfMm * Math.cos(turn), acrossMm - halfMm * Math.sin(turn)};
    }
  }

  /** Who turns on the spot, and who slides: the two examples beside every hinge. */
  static final Hips TURNS =
      new Hips(new Line(-46, 0, 0), Optional.of(new Line(42, 30, 0)), List.of());

  static final Hips SLIDES =
      new Hips(new Line(-22, -62, 0), Optional.of(new Line(20, 110, 0)), List.of());

  /** The mean of the swings; empty where the pelvis was not measured at the top. */
  static Optional<Hips> measured(Pen pen) {
    return line(pen, "top").map(top -> new Hips(top, line(pen, "impact"), path(pen)));
  }

  private static List<double[]> path(Pen pen) {
    return new MeanMotion(pen.sheet().group())
        .points(
            Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, MeanMotion.TAKEAWAY, MeanMotion.IMPACT);
  }

  private static Optional<Line> line(Pen pen, String at) {
    Optional<GroupSummary> turn = pen.mean(Measure.PELVIS_TURN, at);
    Optional<GroupSummary> slide = pen.mean(Measure.PELVIS_SLIDE, at);
    double across = pen.mean(Measure.PELVIS_THRUST, at).map(GroupSummary::mean).orElse(0.0);
    return turn.isPresent() && slide.isPresent()
        ? Optional.of(new Line(turn.get().mean(), slide.get().mean(), across))
        : Optional.empty();
  }

  /**
   * Where the teacher's limits ask these hips to go: as far round as a full turn begins, the middle
   * in the middle of what counts as in place, forward as far as what counts as in time. What is
   * good already stays as it is.
   */
  Hips goal(Teaching teaching) {
    double turn = nearest(teaching, top.turnDeg, "turn-too-far", "turn-full");
    double slide = top.alongMm;
    if (nearest(teaching, slide, "slide-small", "slide-to-target") != slide
        || isWide(teaching, turn, slide)) {
      slide = (value(teaching, "slide-small") + value(teaching, "slide-to-target")) / 2;
    }
    double atTheTop = slide;
    return new Hips(
        new Line(turn, atTheTop, top.acrossMm),
        impact.map(
            line ->
                new Line(
                    line.turnDeg,
                    nearest(teaching, line.alongMm, "come-forward", "forward-too-far"),
                    Math.min(line.acrossMm, value(teaching, "to-the-ball")))),
        List.of());
  }

  /** Whether a reader would see a difference to these. */
  boolean differFrom(Hips other) {
    boolean bothHit = impact.isPresent() && other.impact.isPresent();
    return differ(top, other.top) || (bothHit && differ(impact.get(), other.impact.get()));
  }

  private static boolean differ(Line one, Line other) {
    double mm = Math.hypot(one.alongMm - other.alongMm, one.acrossMm - other.acrossMm);
    return mm >= LEAST_MM || Math.abs(one.turnDeg - other.turnDeg) >= LEAST_DEG;
  }

  private static boolean isWide(Teaching teaching, double turnDeg, double slideMm) {
    double arcMm = HingePicture.HALF_HIPS_MM * Math.toRadians(Math.abs(turnDeg));
    return 100 * arcMm / (arcMm + Math.abs(slideMm)) < value(teaching, "share-low");
  }

  private static double nearest(Teaching teaching, double now, String low, String high) {
    return Math.max(value(teaching, low), Math.min(value(teaching, high), now));
  }

  private static double value(Teaching teaching, String limit) {
    return teaching.limit(limit).value();
  }

  /** The point turned about on the way to the top: along and across; empty with hardly any turn. */
  Optional<double[]> pinMm() {
    return Math.abs(top.turnDeg) < LEAST_TURN_DEG ? Optional.empty() : Optional.of(pin(top));
  }

  static double[] nearer(double[] pinMm) {
    double part = Math.min(1, DEEPEST_MM / Math.hypot(pinMm[0], pinMm[1]));
    return new double[] {part * pinMm[0], part * pinMm[1]};
  }

  /** The ends of all bars, and the edge of the point turned about: along and across, mm. */
  List<double[]> corners(Pen pen) {
    double half = HingePicture.half(pen);
    Stream<double[]> ends =
        HingePicture.bars(this).stream()
            .flatMap(line -> Stream.of(line.endMm(half), line.endMm(-half)));
    return Stream.concat(ends, pinEdge(pen).stream().map(Hips::nearer)).toList();
  }

  private static double[] pin(Line line) {
    double[] pole = TurnCentre.pole(line.alongMm, -line.acrossMm, Math.toRadians(line.turnDeg));
    return new double[] {pole[0], -pole[1]};
  }

  /**
   * The edge of where that point lies: an ellipse whose width in every direction is the 95 % range
   * there, from those of turn, slide and thrust at the top, taken as free of one another (our
   * choice); empty under three swings, with hardly any turn, or where it leaves the paper.
   */
  List<double[]> pinEdge(Pen pen) {
    double turn = half(pen, Measure.PELVIS_TURN);
    double along = half(pen, Measure.PELVIS_SLIDE);
    double across = half(pen, Measure.PELVIS_THRUST);
    if (pinMm().isEmpty() || Double.isNaN(turn + along + across)) {
      return List.of();
    }
    double[] at = pin(top);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (Line moved :
        List.of(
            new Line(top.turnDeg + turn, top.alongMm, top.acrossMm),
            new Line(top.turnDeg, top.alongMm + along, top.acrossMm),
            new Line(top.turnDeg, top.alongMm, top.acrossMm + across))) {
      double dx = pin(moved)[0] - at[0];
      double dy = pin(moved)[1] - at[1];
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
    }
    double x = Math.sqrt(xx);
    double lean = x == 0 ? 0 : xy / x;
    double y = Math.sqrt(Math.max(0, yy - lean * lean));
    if (Math.hypot(at[0], at[1]) + x + Math.hypot(lean, y) > FARTHEST_MM) {
      return List.of();
    }
    return IntStream.rangeClosed(0, CORNERS)
        .mapToDouble(k -> 2 * Math.PI * k / CORNERS)
        .mapToObj(
            a ->
                new double[] {
                  at[0] + x * Math.cos(a), at[1] + lean * Math.cos(a) + y * Math.sin(a)
                })
        .toList();
  }

  private static double half(Pen pen, Measure measure) {
    return pen.mean(measure, "top")
        .filter(mean -> mean.count() >= GroupComparison.FEWEST_SWINGS)
        .map(GroupSummary::halfWidthOfMean)
        .orElse(Double.NaN);
  }
}
