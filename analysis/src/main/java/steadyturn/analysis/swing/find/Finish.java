package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/** The moment after impact from which a unit holds still. */
final class Finish {

  private static final double HOLD_S = 0.25;
  private static final double STILL_RAD_PER_S = Math.toRadians(10);

  /** Stillness needs to be seen without a longer break (our choice), s. */
  private static final double UNSEEN_S = 0.05;

  private static final double SD_S = 0.085;
  private static final double EVENLY = Math.sqrt(12);

  private Finish() {}

  /**
   * First instant in the span from which the rate stays small, in RMS, for a quarter second that
   * was seen. Where nothing was seen just before it, it may lie anywhere there.
   */
  static Optional<Instant> find(UnitStream whole, Vector3 bias, double fromS, double toS) {
    UnitStream stream = whole.between(fromS, toS);
    Gaps gaps = Gaps.of(stream, Gaps.Need.RATE);
    int end = stream.size();
    int to = 0;
    double sum = 0;
    for (int i = 0; i < end; i++) {
      double untilS = stream.timeS(i) + HOLD_S;
      while (to < end && stream.timeS(to) < untilS) {
        sum += square(stream, bias, to++);
      }
      if (untilS > stream.timeS(end - 1)) {
        break;
      }
      boolean isStill = sum < STILL_RAD_PER_S * STILL_RAD_PER_S * (to - i);
      if (isStill && gaps.longestS(stream.timeS(i), untilS) <= UNSEEN_S + 1.5 * gaps.stepS()) {
        return Optional.of(
            instant(stream, bias, settled(stream, bias, i, to), gaps.stepS(), fromS));
      }
      sum -= square(stream, bias, i);
    }
    return Optional.empty();
  }

  /**
   * The finish lies between the last sample seen to turn and the first seen afterwards: where
   * samples are lost between the two, anywhere there.
   */
  private static Instant instant(
      UnitStream stream, Vector3 bias, int settled, double stepS, double fromS) {
    int last = settled;
    while (last >= 0 && !turns(stream, bias, last)) {
      last--;
    }
    int next = last + 1;
    while (next < stream.size() - 1 && !stream.hasRate(next)) {
      next++;
    }
    double lastS = last < 0 ? fromS : stream.timeS(last);
    double nextS = Math.max(lastS, stream.timeS(next));
    return nextS - lastS > UNSEEN_S + 1.5 * stepS
        ? new Instant((lastS + nextS) / 2, Math.hypot(SD_S, (nextS - lastS) / EVENLY))
        : new Instant(stream.timeS(settled), SD_S);
  }

  private static boolean turns(UnitStream stream, Vector3 bias, int i) {
    return square(stream, bias, i) > STILL_RAD_PER_S * STILL_RAD_PER_S;
  }

  /** The last sample in the window that still turns; the RMS of the window let it pass. */
  private static int settled(UnitStream stream, Vector3 bias, int from, int to) {
    int last = from;
    for (int i = from; i < to; i++) {
      last = turns(stream, bias, i) ? i : last;
    }
    return last;
  }

  private static double square(UnitStream stream, Vector3 bias, int i) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double rate = stream.gyroRadPerS(axis, i) - bias.get(axis);
      sum += Double.isNaN(rate) ? 0 : rate * rate; // a break too long is told by the gaps
    }
    return sum;
  }
}
