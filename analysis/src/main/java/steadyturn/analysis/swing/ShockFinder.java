package steadyturn.analysis.swing;

import java.util.Arrays;
import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;

/**
 * The blow of the ball in the accelerometer of an arm unit: the first step of more than 8 g within
 * 2 ms that is also more than 6 times the median step around.
 */
final class ShockFinder {

  private static final double STEP_S = 0.002;
  private static final double LEAST_STEP_MPS2 = 8 * 9.80665;
  private static final double TIMES_MEDIAN = 6;

  private ShockFinder() {}

  /** Looks among samples from..to-1. */
  static Optional<Instant> find(GyroTrack track, int from, int to) {
    double[] steps = steps(track, from, to);
    if (steps.length < 8) {
      return Optional.empty();
    }
    double[] sorted = steps.clone();
    Arrays.sort(sorted);
    double least = Math.max(LEAST_STEP_MPS2, TIMES_MEDIAN * sorted[sorted.length / 2]);
    for (int i = 0; i < steps.length; i++) {
      if (steps[i] > least) {
        return Optional.of(onset(track, from + i));
      }
    }
    return Optional.empty();
  }

  /** Change of the specific force from 2 ms (at least one sample) before each sample to it. */
  private static double[] steps(GyroTrack track, int from, int to) {
    double[] steps = new double[Math.max(0, to - from)];
    int before = from;
    for (int i = from; i < to; i++) {
      while (before < i - 1 && track.timeS(i) - track.timeS(before + 1) > 0.9 * STEP_S) {
        before++;
      }
      steps[i - from] = track.forceUnitMps2(i).minus(track.forceUnitMps2(before)).norm();
    }
    return steps;
  }

  /** The blow fell somewhere between the last calm sample and this one. */
  private static Instant onset(GyroTrack track, int i) {
    double dt = track.timeS(i) - track.timeS(Math.max(0, i - 1));
    return new Instant(track.timeS(i) - dt / 2, Math.hypot(dt / Math.sqrt(12), 0.0004));
  }
}
