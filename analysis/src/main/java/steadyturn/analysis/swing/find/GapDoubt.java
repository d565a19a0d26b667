package steadyturn.analysis.swing.find;

import java.util.List;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * What the lost samples of one unit do to the moments that are read from it: a moment inside a gap
 * lies anywhere in it, and behind a gap the attitude is less sure.
 */
final class GapDoubt {

  private static final double EVENLY = Math.sqrt(12);

  /** Turned by more than this, a bone is somewhere else (our choice). */
  private static final double BEYOND_RAD = Math.toRadians(12);

  // our choice: a backswing takes 0.7 s, a downswing 0.25 s
  private static final double LONGEST_S = 0.4;
  private static final double LONGEST_DOWN_S = 0.12;
  private static final double MARGIN_S = 0.05;
  // the ball is struck about when the arm is fastest
  private static final double AFTER_PEAK_S = 0.1;

  private final Unseen unseen;
  private final List<Bridge> bridges;

  private GapDoubt(Unseen unseen, List<Bridge> bridges) {
    this.unseen = unseen;
    this.bridges = bridges;
  }

  static GapDoubt of(UnitStream stretch, GyroTrack track) {
    Unseen unseen = Unseen.of(stretch);
    return new GapDoubt(unseen, unseen.inner().isEmpty() ? List.of() : track.bridges());
  }

  /**
   * A moment with what is lost around it.
   *
   * @param isInGap whether lost samples have a part in it
   */
  record Moment(Instant at, boolean isInGap) {}

  /** A moment that is read from the samples from so much before it to so much after it. */
  Moment moment(Instant found, double beforeS, double afterS) {
    return unseen
        .first(found.timeS() - beforeS, found.timeS() + afterS)
        .map(gap -> new Moment(within(gap, found), true))
        .orElse(new Moment(found, false));
  }

  private static Instant within(Gaps.Gap gap, Instant found) {
    if (Double.isInfinite(gap.lengthS())) {
      return new Instant(found.timeS(), Math.hypot(found.sdS(), LONGEST_DOWN_S));
    }
    double timeS = gap.holds(found.timeS()) ? (gap.beforeS() + gap.afterS()) / 2 : found.timeS();
    return new Instant(timeS, Math.hypot(found.sdS(), gap.lengthS() / EVENLY));
  }

  /** How far the attitude at one instant may be off against that at another, rad (1 SD). */
  double turnSdRad(double fromS, double toS) {
    double sum = 0;
    for (Bridge bridge : bridges) {
      boolean lies = bridge.beforeS() < toS && bridge.afterS() > fromS;
      sum += lies ? bridge.rotationSdRad() * bridge.rotationSdRad() : 0;
    }
    return Math.sqrt(sum);
  }

  /** Whether the attitude at one instant says nothing of that at another. */
  boolean isBeyond(double fromS, double toS) {
    return turnSdRad(fromS, toS) > BEYOND_RAD;
  }

  /** Whether an instant lies between the first and the last sample that was seen. */
  boolean isWithin(double timeS) {
    return unseen.gaps().stream().noneMatch(g -> g.holds(timeS) && Double.isInfinite(g.lengthS()));
  }

  /**
   * Whether a stroke can be read at all: not more than a part of the way back or down is lost, and
   * no gap holds two of takeaway, top and peak.
   */
  boolean leavesReadable(double takeawayS, double topS, double peakS) {
    return unseen.gaps().stream()
        .filter(g -> g.beforeS() < peakS + AFTER_PEAK_S && g.afterS() > takeawayS - MARGIN_S)
        .allMatch(g -> isBearable(g, takeawayS, topS, peakS));
  }

  private static boolean isBearable(Gaps.Gap gap, double takeawayS, double topS, double peakS) {
    boolean down = gap.afterS() > topS && gap.beforeS() < peakS + AFTER_PEAK_S;
    boolean two = gap.holds(topS) && (gap.holds(takeawayS) || gap.holds(peakS));
    return gap.lengthS() <= (down ? LONGEST_DOWN_S : LONGEST_S) && !two;
  }
}
