package steadyturn.fusion.attitude;

import java.util.Arrays;
import java.util.List;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.ingest.sample.UnitStream;

/**
 * Attitude over one swing from the gyroscope, levelled by the accelerometer in a quiet moment, with
 * its uncertainty. Parameters: tilt at the level moment (2), gyro bias (3), gyro scale and
 * misalignment (9), one for each repaired cut of the rate, and three for each bridge over lost
 * ones: about the level axes, shared by all samples behind it.
 */
public final class LevelTrack implements AttitudeTrack {

  private static final int FIXED = 14;

  private final GyroTrack track;
  private final Sensitivity sensitivity;

  private final Unseen unseen;

  private LevelTrack(GyroTrack track, Sensitivity sensitivity, Unseen unseen) {
    this.track = track;
    this.sensitivity = sensitivity;
    this.unseen = unseen;
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
    double[] sd = new double[FIXED];
    for (int i = 0; i < FIXED; i++) {
      sd[i] = i < 2 ? spreads.tiltRad : i < 5 ? spreads.biasRadPerS : spreads.scale;
    }
    List<Bridge> bridges = level.bridges();
    return new LevelTrack(
        level,
        new Sensitivity(level, (from + to) / 2, repaired.cuts(), bridges, sd),
        Unseen.of(repaired.stream()));
  }

  /** Turn of every sample in the level frame by every parameter, three rows of P a sample. */
  private static final class Sensitivity {

    private final int p;
    private final double[] rows;
    private final double[] axes = new double[9];

    /** Integrals from the first sample on, less what they are at the level moment. */
    Sensitivity(
        GyroTrack track, int level, List<PeakRepair.Cut> cuts, List<Bridge> bridges, double[] sd) {
      int n = track.size();
      this.p = FIXED + cuts.size() + 3 * bridges.size();
      this.rows = new double[3 * p * n];
      for (int k = 1; k < n; k++) {
        System.arraycopy(rows, at(k - 1, 0), rows, at(k, 0), 3 * p);
        addRateErrors(track, k, sd);
        addCuts(track, k, cuts);
        addBridges(track, k, bridges, FIXED + cuts.size());
      }
      double[] there = Arrays.copyOfRange(rows, at(level, 0), at(level + 1, 0));
      for (int k = 0; k < n; k++) {
        int from = at(k, 0);
        for (int i = 0; i < there.length; i++) {
          rows[from + i] -= there[i];
        }
        rows[at(k, 0)] = sd[0];
        rows[at(k, 1) + 1] = sd[1];
      }
    }

    private int at(int k, int row) {
      return (3 * k + row) * p;
    }

    private void addRateErrors(GyroTrack track, int k, double[] sd) {
      double dt = track.timeS(k) - track.timeS(k - 1);
      double meanX = (track.rateUnitRadPerS(0, k) + track.rateUnitRadPerS(0, k - 1)) * 0.5;
      double meanY = (track.rateUnitRadPerS(1, k) + track.rateUnitRadPerS(1, k - 1)) * 0.5;
      double meanZ = (track.rateUnitRadPerS(2, k) + track.rateUnitRadPerS(2, k - 1)) * 0.5;
      track.matrix(k, axes);
      for (int axis = 0; axis < 3; axis++) {
        int bias = 2 + axis;
        int scale = 5 + 3 * axis;
        for (int row = 0; row < 3; row++) {
          double along = axes[3 * row + axis] * dt;
          double scaled = sd[scale] * along;
          int from = at(k, row);
          rows[from + bias] += sd[bias] * along;
          rows[from + scale] += scaled * meanX;
          rows[from + scale + 1] += scaled * meanY;
          rows[from + scale + 2] += scaled * meanZ;
        }
      }
    }

    /** A guessed peak makes the angle about its axis less sure while it lasts. */
    private void addCuts(GyroTrack track, int k, List<PeakRepair.Cut> cuts) {
      for (int c = 0; c < cuts.size(); c++) {
        PeakRepair.Cut cut = cuts.get(c);
        double grown = cut.doubt().atRad(track.timeS(k)) - cut.doubt().atRad(track.timeS(k - 1));
        if (grown != 0) {
          Vector3 level = track.qTrackUnit(k).rotate(Vector3.axis(cut.axis()));
          for (int row = 0; row < 3; row++) {
            rows[at(k, row) + FIXED + c] += grown * level.get(row);
          }
        }
      }
    }

    /** What a bridge may be off by turns all that follows; inside it, the part that is passed. */
    private void addBridges(GyroTrack track, int k, List<Bridge> bridges, int from) {
      for (int b = 0; b < bridges.size(); b++) {
        Bridge bridge = bridges.get(b);
        double grown = passed(bridge, track.timeS(k)) - passed(bridge, track.timeS(k - 1));
        for (int row = 0; row < 3; row++) {
          rows[at(k, row) + from + 3 * b + row] += grown * bridge.rotationSdRad();
        }
      }
    }

    private static double passed(Bridge bridge, double timeS) {
      return Math.max(0, Math.min(1, (timeS - bridge.beforeS()) / bridge.lengthS()));
    }
  }

  @Override
  public boolean isSeen(double instantS) {
    return !unseen.holds(instantS);
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
    return sensitivity.p;
  }

  @Override
  public Vector3 turnRad(int k, double[] z, int from) {
    return new Vector3(turnRad(k, 0, z, from), turnRad(k, 1, z, from), turnRad(k, 2, z, from));
  }

  private double turnRad(int k, int row, double[] z, int from) {
    int at = sensitivity.at(k, row);
    double sum = 0;
    for (int i = 0; i < sensitivity.p; i++) {
      sum += sensitivity.rows[at + i] * z[from + i];
    }
    return sum;
  }

  @Override
  public void putTurn(int k, Vector3 alongLevel, double[] row, int from) {
    double[] rows = sensitivity.rows;
    int x = sensitivity.at(k, 0);
    int y = sensitivity.at(k, 1);
    int z = sensitivity.at(k, 2);
    for (int i = 0; i < sensitivity.p; i++) {
      row[from + i] =
          alongLevel.x() * rows[x + i]
              + alongLevel.y() * rows[y + i]
              + alongLevel.z() * rows[z + i];
    }
  }
}
