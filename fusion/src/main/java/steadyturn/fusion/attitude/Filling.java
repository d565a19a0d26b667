package steadyturn.fusion.attitude;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;

/**
 * Rates found by other means for a cut, sample by sample from the cut's first.
 *
 * @param rateRadPerS rate about the cut's axis, bias included
 * @param angleSdRad spread of the angle since the cut began
 * @param mostSdRad where that spread grows beyond this, the filling is trusted no more
 */
public record Filling(double[] rateRadPerS, double[] angleSdRad, double mostSdRad) {

  /** What follows a filling that is trusted no more, 1 SD (our choice). */
  private static final double LOST_SD_RAD = 0.3;

  /**
   * The stream with these rates in the place of a guessed peak; what the filling does not reach is
   * bridged by a straight line and stays beyond repair.
   */
  public PeakRepair.Repaired into(PeakRepair.Repaired before, PeakRepair.Cut cut) {
    UnitStream stream = before.stream();
    double[] time = stream.timeColumnS();
    double[][] gyro = {
      stream.gyroColumnRadPerS(0), stream.gyroColumnRadPerS(1), stream.gyroColumnRadPerS(2)
    };
    int first = TimeAxis.indexAt(time, cut.fromS());
    double[] column = gyro[cut.axis()].clone();
    gyro[cut.axis()] = column;
    System.arraycopy(rateRadPerS, 0, column, first, rateRadPerS.length);
    bridge(time, column, first + rateRadPerS.length - 1, cut.toS());
    List<PeakRepair.Cut> cuts = new ArrayList<>(before.cuts());
    cuts.remove(cut);
    cuts.addAll(parts(time, first, cut));
    return new PeakRepair.Repaired(stream.withRates(gyro), cuts);
  }

  private static void bridge(double[] time, double[] column, int last, double toS) {
    int after = last + 1;
    while (after < time.length - 1 && time[after] <= toS) {
      after++;
    }
    for (int i = last + 1; i < after; i++) {
      double part = (time[i] - time[last]) / (time[after] - time[last]);
      column[i] = column[last] + part * (column[after] - column[last]);
    }
  }

  private List<PeakRepair.Cut> parts(double[] time, int first, PeakRepair.Cut cut) {
    int trusted = 0;
    while (trusted < angleSdRad.length && angleSdRad[trusted] <= mostSdRad) {
      trusted++;
    }
    double[] at = Arrays.copyOfRange(time, first, first + trusted);
    double[] sd = Arrays.copyOf(angleSdRad, trusted);
    List<PeakRepair.Cut> out = new ArrayList<>();
    double endS = trusted == 0 ? cut.fromS() : at[trusted - 1];
    if (trusted > 0) {
      out.add(new PeakRepair.Cut(cut.axis(), cut.fromS(), endS, false, new AngleDoubt(at, sd)));
    }
    if (trusted == 0 || endS < cut.toS()) {
      double fromS = Math.nextUp(endS);
      AngleDoubt lost = new AngleDoubt(new double[] {fromS}, new double[] {LOST_SD_RAD});
      out.add(new PeakRepair.Cut(cut.axis(), fromS, cut.toS(), true, lost));
    }
    return out;
  }
}
