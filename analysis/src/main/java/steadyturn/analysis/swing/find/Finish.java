package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/** The moment after impact from which a unit holds still. */
final class Finish {

  private static final double HOLD_S = 0.25;
  private static final double STILL_RAD_PER_S = Math.toRadians(10);

  private Finish() {}

  /** First instant in the span from which the rate stays small, in RMS, for a quarter second. */
  static Optional<Instant> find(UnitStream stream, Vector3 bias, double fromS, double toS) {
    int from = stream.indexAt(fromS);
    int end = stream.indexAt(toS);
    int to = from;
    double sum = 0;
    for (int i = from; i < end; i++) {
      while (to < end && stream.timeS(to) < stream.timeS(i) + HOLD_S) {
        sum += square(stream, bias, to++);
      }
      if (stream.timeS(i) + HOLD_S > stream.timeS(end - 1)) {
        break;
      }
      if (sum < STILL_RAD_PER_S * STILL_RAD_PER_S * (to - i)) {
        return Optional.of(new Instant(stream.timeS(settled(stream, bias, i, to)), 0.06));
      }
      sum -= square(stream, bias, i);
    }
    return Optional.empty();
  }

  /** The last sample in the window that still turns; the RMS of the window let it pass. */
  private static int settled(UnitStream stream, Vector3 bias, int from, int to) {
    int last = from;
    for (int i = from; i < to; i++) {
      last = square(stream, bias, i) > STILL_RAD_PER_S * STILL_RAD_PER_S ? i : last;
    }
    return last;
  }

  private static double square(UnitStream stream, Vector3 bias, int i) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double rate = stream.gyroRadPerS(axis, i) - bias.get(axis);
      sum += Double.isNaN(rate) ? 0 : rate * rate;
    }
    return sum;
  }
}
