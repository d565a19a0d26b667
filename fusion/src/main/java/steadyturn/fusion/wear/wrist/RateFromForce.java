package steadyturn.fusion.wear.wrist;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.attitude.Filling;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The rate of the hand while its gyroscope is cut off at full scale, from the accelerometers.
 * Forearm and hand meet at the wrist, so the force the forearm unit feels, carried to the wrist and
 * on to the hand unit by the turning of both, must be the force the hand unit feels: its direction
 * shows the angle of the wrist, its size along the hand the square of the rate. How the units lie
 * to the wrist, and the angle before the cut, are estimated along with the rate from the 80 ms
 * before, with priors. The idea of comparing forces at the joint is that of Seel, Raisch and
 * Schauer 2014, Sensors 14:6891-6909; the rest is ours.
 */
public final class RateFromForce {

  private static final double BEFORE_S = 0.08;
  private static final double SLOPE_S = 0.008;
  private static final double BEFORE_BLOW_S = 0.004;
  private static final double PAST_BLOW_S = 0.003;

  /**
   * What skin and soft tissue do to the force, 1 SD: a unit that shifts by 4 mm (our assumption, as
   * everywhere) at 22 rad/s, the rate about which such cuts lie, feels 4 mm x (22 rad/s)^2 = 1.9
   * m/s^2 more or less. Its own acceleration on the way there is less: 5.8 x 4 mm / (0.27 s)^2 =
   * 0.3 m/s^2 at most with least jerk.
   */
  private static final double FORCE_SD_MPS2 = 2;

  /** For how long it stays the same: our assumption. */
  private static final double FORCE_CORRELATION_S = 0.02;

  /** Where the angle becomes less sure than this, the rate is trusted no more (our choice). */
  private static final double MOST_SD_RAD = Math.toRadians(5);

  private static final int FIXED = WristForces.UNKNOWNS;
  private static final int ROUNDS = 6;

  private final Units units;
  private final GyroTrack hand;
  private final PeakRepair.Cut cut;
  private final WristForces forces;
  private final int from;
  private final int first;
  private final int forcesTo;
  private final int to;

  private RateFromForce(Units units, PeakRepair.Cut cut, Quaternion qBefore, double blowS) {
    this.units = units;
    this.hand = units.hand;
    this.cut = cut;
    this.from = hand.indexAt(startS(cut));
    this.first = hand.indexAt(cut.fromS());
    this.to = last(Math.min(cut.toS(), blowS + PAST_BLOW_S));
    this.forcesTo = last(Math.min(cut.toS(), blowS - BEFORE_BLOW_S));
    this.forces = new WristForces(units, cut, qBefore, from, first);
  }

  private int last(double timeS) {
    int k = Math.min(hand.size() - 1, hand.indexAt(timeS));
    return k > 0 && hand.timeS(k) > timeS ? k - 1 : k;
  }

  /**
   * The two units over the swing.
   *
   * @param handBiasRadPerS what was taken off the hand's rates
   * @param handFullMps2 the hand's accelerometer shows no more
   */
  public record Units(
      GyroTrack forearm,
      GyroTrack hand,
      Vector3 handBiasRadPerS,
      double handFullMps2,
      WristAlignment alignment) {}

  /**
   * The rates in a cut of the hand's rate; empty where it is too short or comes too early.
   *
   * @param qForearmHand attitude of the hand in the forearm at {@link #startS}
   * @param blowS impact: forces are used up to shortly before
   */
  public static Optional<Filling> of(
      Units units, PeakRepair.Cut cut, Quaternion qForearmHand, double blowS) {
    RateFromForce gap = new RateFromForce(units, cut, qForearmHand, blowS);
    return gap.from < 1 || gap.forcesTo - gap.first < 3
        ? Optional.empty()
        : Optional.of(gap.solve());
  }

  /** Where the estimate starts: the attitude of the wrist is needed there. */
  public static double startS(PeakRepair.Cut cut) {
    return cut.fromS() - BEFORE_S;
  }

  private Filling solve() {
    double[] z = new double[FIXED];
    RateChain chain =
        RateChain.begin(hand.timeS(first - 1), hand.timeS(to), shown(first - 1), slopeIn());
    int p = FIXED + chain.size();
    DMatrixRMaj covariance = new DMatrixRMaj(p, p);
    for (int round = 0; round < ROUNDS; round++) {
      DMatrixRMaj normal = new DMatrixRMaj(p, p);
      DMatrixRMaj right = new DMatrixRMaj(p, 1);
      addPriors(z, chain, normal, right);
      addForces(z, chain, normal, right);
      CommonOps_DDRM.invert(normal, covariance);
      DMatrixRMaj change = new DMatrixRMaj(p, 1);
      CommonOps_DDRM.mult(covariance, right, change);
      for (int i = 0; i < FIXED; i++) {
        z[i] += change.data[i];
      }
      chain = chain.moved(change.data, FIXED);
    }
    return filling(chain, covariance);
  }

  private double shown(int k) {
    return hand.rateUnitRadPerS(k).get(cut.axis());
  }

  private double slopeIn() {
    int far = Math.max(0, hand.indexAt(hand.timeS(first - 1) - SLOPE_S));
    return (shown(first - 1) - shown(far)) / (hand.timeS(first - 1) - hand.timeS(far));
  }

  private void addPriors(double[] z, RateChain chain, DMatrixRMaj normal, DMatrixRMaj right) {
    for (int i = 0; i < FIXED; i++) {
      normal.set(i, i, 1);
      right.set(i, -z[i]);
    }
    chain.addBends(normal, right, FIXED);
    boolean endsBeforeBlow = hand.timeS(to) > cut.toS() - 1e-9 && to + 1 < hand.size();
    if (endsBeforeBlow) {
      chain.addKnown(hand.timeS(to + 1), shown(to + 1), normal, right, FIXED);
    }
  }

  private void addForces(double[] z, RateChain chain, DMatrixRMaj normal, DMatrixRMaj right) {
    double[][] seen = forces.predicted(z, chain, forcesTo);
    double[][][] moved = derivatives(z, chain, seen);
    double[] row = new double[moved.length];
    for (int k = 0; k < seen.length; k++) {
      double dt = hand.timeS(from + k) - hand.timeS(from + k - 1);
      double weight = Math.min(1, dt / FORCE_CORRELATION_S) / (FORCE_SD_MPS2 * FORCE_SD_MPS2);
      Vector3 felt = hand.forceUnitMps2(from + k);
      for (int axis = 0; axis < 3; axis++) {
        if (Math.abs(felt.get(axis)) > 0.99 * units.handFullMps2) {
          continue;
        }
        for (int i = 0; i < row.length; i++) {
          row[i] = moved[i][k][axis];
        }
        RateChain.add(normal, right, row, seen[k][axis] - felt.get(axis), weight);
      }
    }
  }

  /** By differences: each unknown a little further. */
  private double[][][] derivatives(double[] z, RateChain chain, double[][] seen) {
    double[][][] moved = new double[FIXED + chain.size()][][];
    for (int i = 0; i < moved.length; i++) {
      double h = i < FIXED ? 0.01 : 0.05;
      double[] other = z.clone();
      if (i < FIXED) {
        other[i] += h;
      }
      RateChain next = i < FIXED ? chain : chain.moved(i - FIXED, h);
      moved[i] = forces.predicted(other, next, forcesTo);
      for (int k = 0; k < seen.length; k++) {
        for (int axis = 0; axis < 3; axis++) {
          moved[i][k][axis] = (moved[i][k][axis] - seen[k][axis]) / h;
        }
      }
    }
    return moved;
  }

  /** Rates and the spread of the angle they add up to, sample by sample. */
  private Filling filling(RateChain chain, DMatrixRMaj covariance) {
    int n = to - first + 1;
    double[] rates = new double[n];
    double[] sd = new double[n];
    double[] row = new double[covariance.numRows];
    for (int k = 0; k < n; k++) {
      double t = hand.timeS(first + k);
      rates[k] = chain.at(t) + units.handBiasRadPerS.get(cut.axis());
      chain.addRow(t, t - hand.timeS(first + k - 1), row, FIXED);
      double sum = 0;
      for (int a = FIXED; a < row.length; a++) {
        for (int b = FIXED; b < row.length; b++) {
          sum += row[a] * covariance.get(a, b) * row[b];
        }
      }
      sd[k] = Math.sqrt(Math.max(0, sum));
    }
    return new Filling(rates, sd, MOST_SD_RAD);
  }
}
