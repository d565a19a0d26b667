package steadyturn.analysis.swing.find;

import java.util.Arrays;
import java.util.Optional;
import steadyturn.fusion.attitude.CentredMean;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.QuietLevel;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;

/**
 * One arm unit around one fast moment: the plane of its downswing, its rate in that plane, the
 * shape of the stroke, its levelled attitude.
 */
final class ArmMotion {

  /** A stretch of time, s. */
  record Span(double fromS, double toS) {}

  // what turns back slower than this is not on its way yet: the definition of the takeaway
  private static final double SLOW_RAD_PER_S = Math.toRadians(8);
  // an arm that stands shows no more than this: what leans or rolls into its rate does so only
  // while it turns (our choice)
  private static final double STANDS_RAD_PER_S = Math.toRadians(1);
  private static final double BEFORE_PEAK_S = 4.2;
  private static final double AFTER_PEAK_S = 1.5;
  // the fastest moment with the roll of the forearm may lie so long after the arm is fastest
  private static final double ROLL_AFTER_S = 0.3;
  private static final double PLANE_S = 0.12;
  private static final int PLANE_ROUNDS = 3;
  private static final double FINE_S = 0.006;
  // a downswing takes no longer; the mean at the edge of a stretch is another than inside
  private static final double DOWN_S = 0.7;
  private static final int EDGE = 16;
  // a parabola over 50 ms keeps what is below about 19 Hz where it is, an arm's trembling too
  private static final double CALM_S = 0.025;
  // our choice, wide: planes of full swings lie 35-65 deg from the ground (common practice, no
  // source), so the axis leans by 25-55 deg
  private static final double LEAST_LEAN = Math.sin(Math.toRadians(8));
  private static final double MOST_LEAN = Math.sin(Math.toRadians(80));
  private static final double HANGING = -Math.sin(Math.toRadians(20));

  private final UnitStream stretch;
  private final GyroTrack track;
  private final double levelSdRad;
  private final Vector3 planeNormal;
  private final WornUnit unit;
  private final double[] inPlaneRadPerS;
  private final StrokeShape shape;
  private final InPlaneDoubt doubt;
  private final GapDoubt gaps;

  private ArmMotion(
      UnitStream stretch,
      QuietLevel level,
      Vector3 planeNormal,
      WornUnit unit,
      double[] inPlaneRadPerS,
      StrokeShape shape,
      InPlaneDoubt doubt,
      GapDoubt gaps) {
    this.stretch = stretch;
    this.track = level.track();
    this.levelSdRad = level.pushRad();
    this.planeNormal = planeNormal;
    this.unit = unit;
    this.inPlaneRadPerS = inPlaneRadPerS;
    this.shape = shape;
    this.doubt = doubt;
    this.gaps = gaps;
  }

  /**
   * Reads the motion up to and around an instant; empty when it is no stroke. The plane is looked
   * for backwards from the moment at which the bone turns fastest across itself: first that of the
   * last tenth of a second, then that of the whole way down.
   */
  static Optional<ArmMotion> around(WornUnit unit, double atS) {
    UnitStream stretch = unit.stream().between(atS - BEFORE_PEAK_S, atS + AFTER_PEAK_S);
    if (stretch.size() < 10) {
      return Optional.empty();
    }
    GyroTrack raw = GyroTrack.of(PeakRepair.repair(stretch).stream(), unit.biasRadPerS());
    BoneTurn turn = new BoneTurn(raw, unit.longAxisUnit());
    double[] time = stretch.timeColumnS();
    int fast = turn.fastest(atS - ROLL_AFTER_S, atS + PLANE_S);
    Vector3 normal = turn.axis(raw.indexAt(time[fast] - PLANE_S), fast);
    for (int round = 0; round < PLANE_ROUNDS; round++) {
      Down down = Down.of(turn, time, normal, fast, DOWN_S);
      fast = down.fast;
      normal = down.top < fast ? turn.axis(down.top, fast) : normal;
    }
    double[] fine = CentredMean.of(time, turn.ratesAbout(normal), FINE_S);
    Optional<StrokeShape> found = StrokeShape.around(time, fine, fast, SLOW_RAD_PER_S);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    StrokeShape shape = found.get();
    Optional<QuietLevel> levelled = QuietLevel.before(raw, raw.timeS(shape.takeaway()));
    if (levelled.isEmpty()) {
      return Optional.empty();
    }
    GyroTrack level = levelled.get().track();
    int reference = shape.takeaway();
    Vector3 levelNormal =
        level.qTrackUnit(reference).rotate(raw.qTrackUnit(reference).conjugate().rotate(normal));
    return Optional.of(
        new ArmMotion(
            stretch,
            levelled.get(),
            levelNormal,
            unit,
            fine,
            shape,
            new InPlaneDoubt(unit, turn, normal, shape),
            GapDoubt.of(stretch, raw)));
  }

  /** The stretch in which the bone turns forward about an axis: its first sample, its fastest. */
  private record Down(int top, int fast) {

    /** Looks no farther than it must; in all that was seen where that is not enough. */
    static Down of(BoneTurn turn, double[] time, Vector3 axis, int fast, double reachS) {
      int from = TimeAxis.indexAt(time, time[fast] - reachS);
      int to = TimeAxis.indexAt(time, time[fast] + reachS);
      double[] near = Arrays.copyOfRange(time, from, to);
      double[] fine = CentredMean.of(near, turn.ratesAbout(axis, from, to), FINE_S);
      int top = Crossing.lastBelow(fine, fast - from, 0) + 1;
      int best = fast - from;
      int end = top;
      for (; end < fine.length && fine[end] > 0; end++) {
        best = fine[end] > fine[best] ? end : best;
      }
      boolean isCutOff = (from > 0 && top < EDGE) || (to < time.length && end > fine.length - EDGE);
      return isCutOff
          ? of(turn, time, axis, fast, Double.POSITIVE_INFINITY)
          : new Down(from + top, from + best);
    }
  }

  /**
   * The last moment before the top at which the bone turns away at less than 8 deg/s.
   *
   * @param strayRadPerS what the rate of another bone may differ by that is asked for
   */
  Instant takeaway(double strayRadPerS) {
    double[] back =
        CentredParabola.upTo(shape.half() + 1, stretch.timeColumnS(), inPlaneRadPerS, CALM_S);
    for (int i = 0; i < back.length; i++) {
      back[i] = -back[i];
    }
    double turnedSd = gaps.turnSdRad(timeS(shape.takeaway()), timeS(shape.peak()));
    double sd = doubt.atTakeawayRadPerS(SLOW_RAD_PER_S, turnedSd);
    double all = Math.hypot(sd, strayRadPerS);
    return Crossing.last(
        stretch.timeColumnS(), back, shape.half(), SLOW_RAD_PER_S, all, STANDS_RAD_PER_S);
  }

  /** The last change of the rate in the plane from back to forward. */
  Instant top(double strayRadPerS) {
    double turnedSd = gaps.turnSdRad(shape.topS(), timeS(shape.peak()));
    double all = Math.hypot(doubt.atTopRadPerS(turnedSd), strayRadPerS);
    return Crossing.last(stretch.timeColumnS(), inPlaneRadPerS, shape.peak(), 0, all);
  }

  /**
   * The nearest return of the bone to its direction before the takeaway in a span: where a ball
   * would have been struck, s.
   */
  double nearestReturnS(Span where) {
    Vector3 reference = boneLevel(shape.takeaway());
    int best = Math.min(track.size() - 1, track.indexAt(where.fromS()));
    for (int i = best; i < track.size() && timeS(i) < where.toS(); i++) {
      best = boneLevel(i).dot(reference) > boneLevel(best).dot(reference) ? i : best;
    }
    return timeS(best);
  }

  /** Direction of the bone at sample i in the level frame. */
  Vector3 boneLevel(int i) {
    return track.qTrackUnit(i).rotate(unit.longAxisUnit());
  }

  /**
   * A golf swing goes down round an axis that leans: up and towards the ball for a right-handed
   * player, down for a left-handed one, and it starts with the arm hanging.
   */
  boolean isGolfLike(int handedSign) {
    double lean = handedSign * planeNormal.z();
    return lean > LEAST_LEAN && lean < MOST_LEAN && boneLevel(shape.takeaway()).z() < HANGING;
  }

  double peakRadPerS() {
    return inPlaneRadPerS[shape.peak()];
  }

  /** About when the way back begins, s. */
  double takeawayS() {
    return timeS(shape.takeaway());
  }

  double timeS(int i) {
    return track.timeS(i);
  }

  UnitStream stretch() {
    return stretch;
  }

  GyroTrack track() {
    return track;
  }

  /** What the arm's own movement may have tilted the level by, rad. */
  double levelSdRad() {
    return levelSdRad;
  }

  Vector3 planeNormal() {
    return planeNormal;
  }

  double[] inPlaneRadPerS() {
    return inPlaneRadPerS;
  }

  double inPlaneRadPerS(double timeS) {
    return inPlaneRadPerS[Math.min(track.size() - 1, track.indexAt(timeS))];
  }

  StrokeShape shape() {
    return shape;
  }

  Vector3 longAxisUnit() {
    return unit.longAxisUnit();
  }

  /** What lost samples do to all this. */
  GapDoubt gaps() {
    return gaps;
  }

  /** Whether the stroke can be told in spite of them. */
  boolean isReadable() {
    return gaps.leavesReadable(takeawayS(), shape.topS(), timeS(shape.peak()));
  }
}
