package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.CentredMean;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * One arm unit around one fast moment: its levelled attitude, its rate in the plane of the
 * downswing and the shape of the stroke.
 */
final class ArmMotion {

  private final UnitStream stretch;
  private final GyroTrack track;
  private final Vector3 planeNormal;
  private final Vector3 longAxisUnit;
  private final double[] inPlaneRadPerS;
  private final StrokeShape shape;
  private final GapDoubt gaps;

  private static final double BEFORE_PEAK_S = 3.5;
  private static final double AFTER_PEAK_S = 1.5;
  private static final double PLANE_S = 0.12;
  private static final double LEVEL_FROM_S = 0.75;
  private static final double LEVEL_TO_S = 0.15;
  // our choice: over less, the push of a standing arm does not cancel
  private static final double LEAST_LEVEL_S = 0.15;
  private static final double LONGEST_STEP_S = 0.03;
  // our choice, wide: planes of full swings lie 35-65 deg from the ground (common practice, no
  // source), so the axis leans by 25-55 deg
  private static final double LEAST_LEAN = Math.sin(Math.toRadians(8));
  private static final double MOST_LEAN = Math.sin(Math.toRadians(80));
  private static final double HANGING = -Math.sin(Math.toRadians(20));

  private ArmMotion(
      UnitStream stretch,
      GyroTrack track,
      Vector3 planeNormal,
      Vector3 longAxisUnit,
      double[] inPlaneRadPerS,
      StrokeShape shape,
      GapDoubt gaps) {
    this.stretch = stretch;
    this.track = track;
    this.planeNormal = planeNormal;
    this.longAxisUnit = longAxisUnit;
    this.inPlaneRadPerS = inPlaneRadPerS;
    this.shape = shape;
    this.gaps = gaps;
  }

  /**
   * Reads the motion around sample {@code peak} of the stream; empty when it is no stroke. A roll
   * of the forearm may have drawn the eye to the wrong moment: then once more around the moment at
   * which the movement in the plane is fastest.
   */
  static Optional<ArmMotion> around(
      UnitStream stream, int peak, Vector3 bias, Vector3 longAxisUnit, double longestBackS) {
    Optional<ArmMotion> first = once(stream, peak, bias, longAxisUnit, longestBackS);
    if (first.isEmpty()) {
      return first;
    }
    double fastestS = first.get().timeS(first.get().shape().peak());
    return Math.abs(fastestS - stream.timeS(peak)) < PLANE_S / 2
        ? first
        : once(stream, stream.indexAt(fastestS), bias, longAxisUnit, longestBackS);
  }

  private static Optional<ArmMotion> once(
      UnitStream stream, int peak, Vector3 bias, Vector3 longAxisUnit, double longestBackS) {
    double peakS = stream.timeS(peak);
    UnitStream stretch = stream.between(peakS - BEFORE_PEAK_S, peakS + AFTER_PEAK_S);
    GyroTrack raw = GyroTrack.of(PeakRepair.repair(stretch).stream(), bias);
    Vector3 normal = planeNormal(raw, raw.indexAt(peakS), longAxisUnit);
    normal = planeNormal(raw, fastestAbout(raw, normal, peakS), longAxisUnit);
    double[] rate = raw.ratesAboutRadPerS(normal);
    double[] time = stretch.timeColumnS();
    double[] fine = CentredMean.of(time, rate, 0.006);
    double[] coarse = CentredMean.of(time, rate, 0.015);
    Optional<StrokeShape> found =
        StrokeShape.around(time, fine, coarse, fastest(raw, fine, peakS), longestBackS);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    StrokeShape shape = found.get();
    Optional<GyroTrack> levelled = levelled(raw, raw.timeS(shape.takeaway()));
    if (levelled.isEmpty()) {
      return Optional.empty();
    }
    GyroTrack level = levelled.get();
    int reference = shape.takeaway();
    Vector3 levelNormal =
        level.qTrackUnit(reference).rotate(raw.qTrackUnit(reference).conjugate().rotate(normal));
    return Optional.of(
        new ArmMotion(
            stretch, level, levelNormal, longAxisUnit, fine, shape, GapDoubt.of(stretch, raw)));
  }

  /**
   * Level from the specific force before the takeaway, where the arm moves least; none where that
   * is lost. The first tenth of a second of movement lies before the takeaway and would tilt the
   * level by 2 deg.
   */
  static Optional<GyroTrack> levelled(GyroTrack raw, double takeawayS) {
    double toS = takeawayS - LEVEL_TO_S;
    double fromS = Math.max(raw.timeS(0), takeawayS - LEVEL_FROM_S);
    int from = Math.min(raw.indexAt(takeawayS - LEVEL_FROM_S), raw.size() - 2);
    int to = Math.max(from + 1, raw.indexAt(toS));
    double seenS = 0;
    for (int i = raw.indexAt(fromS) + 1; i < raw.size() && raw.timeS(i) <= toS; i++) {
      double stepS = raw.timeS(i) - raw.timeS(i - 1);
      seenS += raw.hasForce(i) && stepS < LONGEST_STEP_S ? stepS : 0;
    }
    return seenS >= Math.min(LEAST_LEVEL_S, (toS - fromS) / 2)
        ? Optional.of(raw.levelled(from, to))
        : Optional.empty();
  }

  private static int fastest(GyroTrack track, double[] rate, double peakS) {
    int fastest = track.indexAt(peakS);
    for (int i = track.indexAt(peakS - PLANE_S); i < track.indexAt(peakS + PLANE_S); i++) {
      fastest = rate[i] > rate[fastest] ? i : fastest;
    }
    return fastest;
  }

  private static int fastestAbout(GyroTrack track, Vector3 normal, double peakS) {
    int fastest = track.indexAt(peakS);
    double highest = rateAbout(track, normal, fastest);
    for (int i = track.indexAt(peakS - PLANE_S); i < track.indexAt(peakS + PLANE_S); i++) {
      double rate = rateAbout(track, normal, i);
      fastest = rate > highest ? i : fastest;
      highest = Math.max(highest, rate);
    }
    return fastest;
  }

  private static double rateAbout(GyroTrack track, Vector3 normal, int i) {
    return track.qTrackUnit(i).rotate(track.rateUnitRadPerS(i)).dot(normal);
  }

  /** Mean axis of the last part of the downswing; the turn about the bone itself is left out. */
  private static Vector3 planeNormal(GyroTrack track, int peak, Vector3 longAxisUnit) {
    Vector3 sum = Vector3.ZERO;
    for (int i = track.indexAt(track.timeS(peak) - PLANE_S); i <= peak; i++) {
      Vector3 rate = track.rateUnitRadPerS(i);
      Vector3 across = rate.minus(longAxisUnit.times(rate.dot(longAxisUnit)));
      sum = sum.plus(track.qTrackUnit(i).rotate(across.times(across.norm())));
    }
    return sum.unit();
  }

  /** Direction of the bone at sample i in the level frame. */
  Vector3 boneLevel(int i) {
    return track.qTrackUnit(i).rotate(longAxisUnit);
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

  double timeS(int i) {
    return track.timeS(i);
  }

  UnitStream stretch() {
    return stretch;
  }

  GyroTrack track() {
    return track;
  }

  Vector3 planeNormal() {
    return planeNormal;
  }

  double[] inPlaneRadPerS() {
    return inPlaneRadPerS;
  }

  StrokeShape shape() {
    return shape;
  }

  Vector3 longAxisUnit() {
    return longAxisUnit;
  }

  /** What lost samples do to all this. */
  GapDoubt gaps() {
    return gaps;
  }

  /** Whether the stroke can be told in spite of them. */
  boolean isReadable() {
    return gaps.leavesReadable(shape.takeawayS(), shape.topS(), timeS(shape.peak()));
  }
}
