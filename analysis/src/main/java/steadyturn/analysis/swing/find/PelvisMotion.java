package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.CentredParabola;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * The pelvis unit around one swing: its turn rate about the vertical, towards the target positive,
 * below about 5 Hz.
 */
final class PelvisMotion {

  private final GyroTrack track;
  private final double[] timeS;
  private final double[] turnRadPerS;

  // a local parabola of this half width passes what is below about 5 Hz (0.47 / 5 Hz)
  private static final double HALF_WIDTH_S = 0.09;

  private PelvisMotion(GyroTrack track, double[] timeS, double[] turnRadPerS) {
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
    GyroTrack raw = GyroTrack.of(stretch, bias);
    // the whole span: a trunk stays upright, and its accelerations cancel in the mean
    GyroTrack track = raw.levelled(0, raw.size());
    double[] rate = new double[track.size()];
    for (int i = 0; i < rate.length; i++) {
      rate[i] = handedSign * track.qTrackUnit(i).rotate(track.rateUnitRadPerS(i)).z();
    }
    double[] time = stretch.timeColumnS();
    return Optional.of(new PelvisMotion(track, time, CentredParabola.of(time, rate, HALF_WIDTH_S)));
  }

  /** The last change from turning back to turning forward in the span: the least turn. */
  Optional<Instant> turnaround(double fromS, double toS) {
    int peak = fastest(fromS, toS);
    for (int i = peak; i > 0 && timeS[i] > fromS; i--) {
      if (turnRadPerS[i] > 0 && turnRadPerS[i - 1] <= 0) {
        int before = Math.max(0, track.indexAt(timeS[i] - 0.02));
        int after = Math.min(timeS.length - 1, track.indexAt(timeS[i] + 0.02));
        double slope = (turnRadPerS[after] - turnRadPerS[before]) / (timeS[after] - timeS[before]);
        double sd = Math.hypot(0.004, Math.toRadians(8) / Math.max(slope, 1));
        return Optional.of(new Instant(Crossing.atS(timeS, turnRadPerS, i, 0), sd));
      }
    }
    return Optional.empty();
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
