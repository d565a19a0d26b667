package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * The pelvis unit around one swing: its turn rate about the vertical, towards the target positive,
 * below about 5 Hz.
 */
final class PelvisMotion {

  private final GyroTrack track;
  private final Gaps gaps;
  private final double[] timeS;
  private final double[] turnRadPerS;

  // a local parabola of this half width passes what is below about 5 Hz (0.47 / 5 Hz)
  private static final double HALF_WIDTH_S = 0.09;

  // hips that drift at address turn slower than this, and in a takeaway they pass it when the arm
  // passes its own level, within 55 ms and the time they take over 2 deg/s: our assumptions
  static final double SLOW_RAD_PER_S = Math.toRadians(4.5);
  private static final double SLOW_SD_RAD_PER_S = Math.toRadians(2);
  private static final double TAKEAWAY_SD_S = 0.055;

  // a unit that springs on soft skin, at 6 to 14 Hz, turns round later than the bone: our
  // assumptions
  private static final double SKIN_LAG_S = 0.01;
  private static final double SKIN_LAG_SD_S = 0.005;

  // bodies that sway and belts that slip turn so much beside the hips meanwhile: our assumption
  private static final double ALIKE_RAD = Math.toRadians(1.5);

  /** More of the span must have been seen than was lost. */
  private static final double LOST_PART = 0.5;

  /** How near a gap touches an instant, shorter ones that do not, longer ones that hide it, s. */
  private static final double NEAR_S = 0.04;

  private static final double SHORT_S = 0.02;
  private static final double LONGEST_S = 0.12;

  private PelvisMotion(GyroTrack track, Gaps gaps, double[] timeS, double[] turnRadPerS) {
    this.gaps = gaps;
    this.track = track;
    this.timeS = timeS;
    this.turnRadPerS = turnRadPerS;
  }

  /** Reads a span of the stream; empty when fewer than ten samples lie in it. */
  static Optional<PelvisMotion> over(
      UnitStream stream, Vector3 bias, double fromS, double toS, int handedSign) {
    UnitStream stretch = stream.between(fromS, toS);
    if (stretch.size() < 10) {
      return Optional.empty();
    }
    Gaps gaps = Gaps.of(stretch, Gaps.Need.BOTH);
    double lost = gaps.lostPart(stretch.timeS(0), stretch.timeS(stretch.size() - 1));
    if (!(lost <= LOST_PART)) {
      return Optional.empty();
    }
    GyroTrack raw = GyroTrack.of(stretch, bias);
    // the whole span: a trunk stays upright, and its accelerations cancel in the mean
    GyroTrack track = raw.levelled(0, raw.size());
    double[] rate = Arrays.stream(track.ratesTrackRadPerS()[2]).map(r -> handedSign * r).toArray();
    double[] time = stretch.timeColumnS();
    return Optional.of(
        new PelvisMotion(track, gaps, time, CentredParabola.of(time, rate, HALF_WIDTH_S)));
  }

  /**
   * Where hips that turn back turn forward, before they are fastest in the span: the least turn.
   * Where they turned back as far, or nearly, more than once, it may be any of these moments.
   */
  Optional<Instant> turnaround(double fromS, double toS) {
    double turn = 0;
    double least = Double.POSITIVE_INFINITY;
    List<Integer> rounds = new ArrayList<>();
    List<Double> turns = new ArrayList<>();
    for (int i = fastest(fromS, toS); i > 0 && timeS[i] > fromS; i--) {
      if (turnRadPerS[i] > 0 && turnRadPerS[i - 1] <= 0) {
        rounds.add(i);
        turns.add(turn);
        least = Math.min(least, turn);
      }
      turn -= (timeS[i] - timeS[i - 1]) * (turnRadPerS[i] + turnRadPerS[i - 1]) / 2;
    }
    if (rounds.isEmpty()) {
      return Optional.empty();
    }
    int at = rounds.get(turns.indexOf(least));
    double alikeS = 0;
    for (int k = 0; k < rounds.size(); k++) {
      if (turns.get(k) < least + ALIKE_RAD) {
        alikeS = Math.max(alikeS, Math.abs(timeS[rounds.get(k)] - timeS[at]));
      }
    }
    return turnaround(at, alikeS / MeasureValue.Z95);
  }

  /** The moment at which the turn passes its least before a sample. */
  private Optional<Instant> turnaround(int i, double alikeSdS) {
    int before = Math.max(0, track.indexAt(timeS[i] - 0.02));
    int after = Math.min(timeS.length - 1, track.indexAt(timeS[i] + 0.02));
    double slope = (turnRadPerS[after] - turnRadPerS[before]) / (timeS[after] - timeS[before]);
    double sd = Math.hypot(0.004, Math.toRadians(8) / Math.max(slope, 1));
    Instant shown = new Instant(Crossing.atS(timeS, turnRadPerS, i, 0), Math.hypot(sd, alikeSdS));
    return Optional.of(shown.earlier(SKIN_LAG_S, SKIN_LAG_SD_S))
        .flatMap(bone -> seen(bone.timeS(), bone.sdS()));
  }

  /**
   * When the arm leaves the address, as far as the hips show it: before sample {@code half} of
   * their way back.
   */
  Instant leaves(int half) {
    double[] back = new double[half + 1];
    for (int i = 0; i < back.length; i++) {
      back[i] = -turnRadPerS[i];
    }
    return Crossing.last(timeS, back, half, SLOW_RAD_PER_S, SLOW_SD_RAD_PER_S).and(TAKEAWAY_SD_S);
  }

  /** The same for a way back that lies in a span; none where the hips hardly turn there. */
  Optional<Instant> leaves(double fromS, double toS) {
    int half = Math.min(timeS.length - 1, track.indexAt(fromS));
    for (int i = half; i < timeS.length && timeS[i] < toS; i++) {
      half = turnRadPerS[i] < turnRadPerS[half] ? i : half;
    }
    boolean begins = turnRadPerS[0] > -SLOW_RAD_PER_S;
    return turnRadPerS[half] < -3 * SLOW_RAD_PER_S && begins
        ? Optional.of(leaves(half)).flatMap(i -> seen(i.timeS(), i.sdS()))
        : Optional.empty();
  }

  /** An instant near a gap may lie anywhere in it; near a long one it was not seen. */
  private Optional<Instant> seen(double atS, double sdS) {
    double unseenS = gaps.longestS(atS - NEAR_S, atS + NEAR_S);
    double gapS = gaps.around(atS).map(Gaps.Gap::lengthS).orElse(unseenS);
    if (gapS > LONGEST_S) {
      return Optional.empty();
    }
    return Optional.of(new Instant(atS, unseenS > SHORT_S ? Math.hypot(sdS, gapS / 2) : sdS));
  }

  /** Index of the fastest turn towards the target in the span. */
  int fastest(double fromS, double toS) {
    int from = Math.min(timeS.length - 1, track.indexAt(fromS));
    int best = from;
    for (int i = from; i < timeS.length && timeS[i] < toS; i++) {
      best = turnRadPerS[i] > turnRadPerS[best] ? i : best;
    }
    return best;
  }

  GyroTrack track() {
    return track;
  }

  double[] timeS() {
    return timeS;
  }

  double[] turnRadPerS() {
    return turnRadPerS;
  }
}
