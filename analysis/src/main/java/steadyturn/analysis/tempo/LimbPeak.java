package steadyturn.analysis.tempo;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import steadyturn.fusion.attitude.CentredMean;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.UnitMount;
import steadyturn.ingest.sample.UnitStream;

/**
 * When a limb is fastest across its bone, so that its roll does not count. The roll is as fast as
 * the swing and leaks into the rate across where the long axis is not known; the skin slips on top
 * of that. How far each of these moves the peak is tried out, either way.
 */
final class LimbPeak {

  private static final double HALF_WIDTH_S = 0.008;
  // above the gyroscope's noise, and low enough for a lopsided peak to be seen as it is: our choice
  private static final double PART = 0.002;
  // three points of Gauss and Hermite: what grows faster than the spread shows, too
  private static final double TRIED = Math.sqrt(3);

  private static final double EVENLY = Math.sqrt(12);

  // a unit that rings on its skin moves a flat peak: our assumption
  private static final double SKIN_RINGS_S = 0.0025;

  private final double[] timeS;
  private final Vector3[] segmentRadPerS;

  private LimbPeak(UnitStream stream, Vector3 bias, UnitMount mount) {
    this.timeS = stream.timeColumnS();
    this.segmentRadPerS = new Vector3[timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      segmentRadPerS[i] = mount.qUnitSegment().conjugate().rotate(rate(stream, i).minus(bias));
    }
  }

  /** Finds the peak in a stretch of a limb unit, cut rates rounded off. */
  static PeakTime of(UnitStream cut, Vector3 bias, UnitMount mount, SkinSlip slip) {
    PeakRepair.Repaired repaired = PeakRepair.repair(cut);
    LimbPeak limb = new LimbPeak(repaired.stream(), bias, mount);
    double[] steady = limb.turns(t -> mount.longAxisSdRad());
    double[] untilTop = limb.turns(t -> mount.slipSdRad() * slip.parts(t)[0]);
    double[] untilImpact = limb.turns(t -> mount.slipSdRad() * slip.parts(t)[1]);
    PeakTime peak = limb.turned(Vector3.ZERO, steady);
    double variance = 0;
    for (Vector3 along : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      // a turn about the bone itself does not move its axis
      variance += along.equals(Vector3.X) ? 0 : limb.moved(peak, along, steady);
      variance += limb.moved(peak, along, untilTop);
      variance += limb.moved(peak, along, untilImpact);
    }
    double cutS = repaired.cuts().stream().mapToDouble(c -> c.toS() - c.fromS()).max().orElse(0);
    double sampled = Math.hypot(SKIN_RINGS_S, Math.hypot(cutS, limb.stepS()) / EVENLY);
    double sd = Math.hypot(Math.sqrt(variance), sampled);
    return new PeakTime(peak.timeS(), sd, peak.value());
  }

  private double[] turns(DoubleUnaryOperator sizeRad) {
    return Arrays.stream(timeS).map(sizeRad).toArray();
  }

  /** The gyroscope's rate of one sample, unit axes, rad/s. */
  static Vector3 rate(UnitStream stream, int i) {
    return Vector3.each(axis -> stream.gyroRadPerS(axis, i));
  }

  private double stepS() {
    return (timeS[timeS.length - 1] - timeS[0]) / (timeS.length - 1);
  }

  /**
   * Variance of the peak's time that turns of this spread cause, s^2: by the larger of both ways,
   * as a peak that has already been moved to where nothing moves it further shows it the other way
   * only.
   */
  private double moved(PeakTime peak, Vector3 along, double[] sizesRad) {
    double there = turned(along.times(TRIED), sizesRad).timeS() - peak.timeS();
    double back = turned(along.times(-TRIED), sizesRad).timeS() - peak.timeS();
    return Math.max(there * there, back * back) / (TRIED * TRIED);
  }

  /** The peak with the unit turned on its segment by small turns in one direction. */
  private PeakTime turned(Vector3 along, double[] sizesRad) {
    double[] rate = new double[timeS.length];
    for (int i = 0; i < rate.length; i++) {
      double growing = i == 0 ? 0 : (sizesRad[i] - sizesRad[i - 1]) / (timeS[i] - timeS[i - 1]);
      Vector3 w = segmentRadPerS[i];
      double y = along.z() * w.x() - along.x() * w.z();
      double z = along.x() * w.y() - along.y() * w.x();
      double seenY = w.y() - sizesRad[i] * y + growing * along.y();
      double seenZ = w.z() - sizesRad[i] * z + growing * along.z();
      rate[i] = Math.sqrt(seenY * seenY + seenZ * seenZ);
    }
    return PeakTime.of(timeS, CentredMean.of(timeS, rate, HALF_WIDTH_S), PART);
  }
}
