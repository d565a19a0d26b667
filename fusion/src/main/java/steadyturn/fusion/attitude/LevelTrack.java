package steadyturn.fusion.attitude;

import java.util.List;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * Attitude over one swing from the gyroscope, levelled by the accelerometer in a quiet moment, with
 * its uncertainty. Parameters: tilt at the level moment (2), gyro bias (3), gyro scale and
 * misalignment (9), and one for each repaired cut of the rate.
 */
public final class LevelTrack implements AttitudeTrack {

  private static final int FIXED = 14;

  private final GyroTrack track;
  private final double[][][] sensitivity;

  private LevelTrack(GyroTrack track, double[][][] sensitivity) {
    this.track = track;
    this.sensitivity = sensitivity;
  }

  /**
   * Spreads of what a unit hides, 1 SD.
   *
   * @param tiltRad of levelling by the accelerometer while the arm is nearly still
   * @param biasRadPerS of the gyro bias after its rest value is taken off
   * @param scale of each element of the gyro's scale and misalignment matrix
   */
  public record Spreads(double tiltRad, double biasRadPerS, double scale) {

    /** A unit as it comes: 27 mg of accelerometer bias, 1 % and 0.6 deg in the gyro. */
    public static final Spreads RAW = new Spreads(Math.toRadians(1.6), Math.toRadians(0.1), 0.01);

    /** A unit that was calibrated: 4 mg, 0.3 % and 0.15 deg. */
    public static final Spreads CALIBRATED =
        new Spreads(Math.toRadians(0.4), Math.toRadians(0.06), 0.003);

    /** The spreads that fit what is stated of the unit. */
    public static Spreads of(UnitStream stream) {
      return stream.facts().calibrated() ? CALIBRATED : RAW;
    }
  }

  /**
   * Integrates a repaired stretch.
   *
   * @param levelFromS start of the quiet moment, s
   * @param levelToS its end, s
   */
  public static LevelTrack of(
      PeakRepair.Repaired repaired,
      Vector3 biasRadPerS,
      Spreads spreads,
      double levelFromS,
      double levelToS) {
    GyroTrack raw = GyroTrack.of(repaired.stream(), biasRadPerS);
    int from = Math.min(raw.size() - 1, raw.indexAt(levelFromS));
    int to = Math.max(from + 1, Math.min(raw.size(), raw.indexAt(levelToS)));
    GyroTrack level = raw.levelled(from, to);
    List<PeakRepair.Cut> cuts = repaired.cuts();
    double[][][] sensitivity = sensitivities(level, (from + to) / 2, cuts);
    scale(sensitivity, spreads(spreads));
    return new LevelTrack(level, sensitivity);
  }

  private static double[] spreads(Spreads spreads) {
    double[] sd = new double[FIXED];
    for (int i = 0; i < FIXED; i++) {
      sd[i] = i < 2 ? spreads.tiltRad : i < 5 ? spreads.biasRadPerS : spreads.scale;
    }
    return sd;
  }

  private static void scale(double[][][] sensitivity, double[] sd) {
    for (double[][] rows : sensitivity) {
      for (double[] row : rows) {
        for (int i = 0; i < sd.length; i++) {
          row[i] *= sd[i];
        }
      }
    }
  }

  /** Integrals of the attitude from the level moment on, forward and backward in one sweep. */
  private static double[][][] sensitivities(GyroTrack track, int level, List<PeakRepair.Cut> cuts) {
    int n = track.size();
    int p = FIXED + cuts.size();
    double[][][] out = new double[n][3][p];
    for (int k = 1; k < n; k++) {
      double dt = track.timeS(k) - track.timeS(k - 1);
      for (int row = 0; row < 3; row++) {
        System.arraycopy(out[k - 1][row], 0, out[k][row], 0, p);
      }
      addRateErrors(track, k, dt, out[k]);
      addCuts(track, k, cuts, out[k]);
    }
    double[][] atLevel = out[level].clone();
    for (int row = 0; row < 3; row++) {
      atLevel[row] = out[level][row].clone();
    }
    for (int k = 0; k < n; k++) {
      for (int row = 0; row < 3; row++) {
        for (int i = 0; i < p; i++) {
          out[k][row][i] -= atLevel[row][i];
        }
      }
      out[k][0][0] = 1;
      out[k][1][1] = 1;
    }
    return out;
  }

  private static void addRateErrors(GyroTrack track, int k, double dt, double[][] rows) {
    Quaternion q = track.qTrackUnit(k);
    Vector3 rate = track.rateUnitRadPerS(k).plus(track.rateUnitRadPerS(k - 1)).times(0.5);
    Vector3[] axes = {q.rotate(Vector3.X), q.rotate(Vector3.Y), q.rotate(Vector3.Z)};
    for (int row = 0; row < 3; row++) {
      for (int axis = 0; axis < 3; axis++) {
        double along = axes[axis].get(row) * dt;
        rows[row][2 + axis] += along;
        for (int by = 0; by < 3; by++) {
          rows[row][5 + 3 * axis + by] += along * rate.get(by);
        }
      }
    }
  }

  /** A guessed peak makes the angle about its axis less sure while it lasts. */
  private static void addCuts(GyroTrack track, int k, List<PeakRepair.Cut> cuts, double[][] rows) {
    for (int c = 0; c < cuts.size(); c++) {
      PeakRepair.Cut cut = cuts.get(c);
      double grown = cut.doubt().atRad(track.timeS(k)) - cut.doubt().atRad(track.timeS(k - 1));
      if (grown != 0) {
        Vector3 axis = cut.axis() == 0 ? Vector3.X : cut.axis() == 1 ? Vector3.Y : Vector3.Z;
        Vector3 level = track.qTrackUnit(k).rotate(axis);
        for (int row = 0; row < 3; row++) {
          rows[row][FIXED + c] += grown * level.get(row);
        }
      }
    }
  }

  @Override
  public int size() {
    return track.size();
  }

  @Override
  public double timeS(int k) {
    return track.timeS(k);
  }

  @Override
  public Quaternion qLevelUnit(int k) {
    return track.qTrackUnit(k);
  }

  @Override
  public Vector3 rateUnitRadPerS(int k) {
    return track.rateUnitRadPerS(k);
  }

  @Override
  public int parameters() {
    return sensitivity[0][0].length;
  }

  @Override
  public double[][] sensitivity(int k) {
    return sensitivity[k];
  }
}
