package steadyturn.analysis.pelvis;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.TimeAxis;

/**
 * The pelvis over one swing: its pose at every sample since address, and how each independent
 * source of error would move that pose. Address is the mean over 250..30 ms before the takeaway.
 *
 * <p>Errors are carried as independent columns (the factor of the joint covariance of unit,
 * geometry and aim), so that the spread of anything computed from several instants keeps what the
 * instants have in common.
 */
public final class PelvisTrack {

  private static final double REFERENCE_FROM_S = 0.25;
  private static final double REFERENCE_TO_S = 0.03;

  /** A neighbour farther off lies behind a gap, s. */
  private static final double BESIDE_S = 0.025;

  /** Shorter gaps are in the spread and not spoken of, s. */
  private static final double SPOKEN_OF_S = 0.03;

  /** Of a turn, rad, or a place, m, in a central difference. */
  private static final double STEP = 1e-5;

  private static final Vector3[] AXES = {Vector3.X, Vector3.Y, Vector3.Z};

  /**
   * Inputs of the pose that errors reach: turn and place now, turn and place at address, mounting,
   * arm, aim.
   */
  private static final int INPUTS = 19;

  private final UnitMotion motion;
  private final PelvisGeometry geometry;
  private final int h;
  private final DMatrixRMaj factor;
  private final int addressIndex;
  private final double addressAzimuthRad;
  private final Vector3 addressMidHipM;
  private final double aimRad;
  private final double[] largestTurnRad;

  private PelvisTrack(
      UnitMotion motion,
      PelvisGeometry geometry,
      Handedness handed,
      double aimRad,
      double aimSdRad,
      double takeawayS) {
    this.motion = motion;
    this.aimRad = aimRad;
    this.geometry = geometry;
    this.h = handed.sign();
    this.factor = factor(motion, geometry, aimSdRad);
    int from = indexAt(takeawayS - REFERENCE_FROM_S);
    int to = Math.max(from + 1, indexAt(takeawayS - REFERENCE_TO_S));
    if (from > 0 && timeS(from) - timeS(from - 1) > BESIDE_S) {
      from--; // both sides of a gap speak for it
    }
    this.addressIndex = beforeGap(from, to).orElse((from + to) / 2);
    double first = PoseMath.azimuthRad(qLevelPelvis(from));
    double sum = 0;
    double weights = 0;
    Vector3 place = Vector3.ZERO;
    for (int k = from; k < to; k++) {
      double weight = timeS(Math.min(size() - 1, k + 1)) - timeS(Math.max(0, k - 1));
      weights += weight;
      sum += weight * PoseMath.wrap(PoseMath.azimuthRad(qLevelPelvis(k)) - first);
      place = place.plus(midHipM(k).times(weight));
    }
    this.addressAzimuthRad = first + sum / weights;
    this.addressMidHipM = place.times(1 / weights);
    this.largestTurnRad = largestTurns();
  }

  /** The last sample before a gap in the address, so that its whole spread counts behind it. */
  private OptionalInt beforeGap(int from, int to) {
    return IntStream.range(from, Math.min(to, size() - 1))
        .filter(k -> timeS(k + 1) - timeS(k) > SPOKEN_OF_S)
        .findFirst();
  }

  private double[] largestTurns() {
    double[] largest = new double[size()];
    for (int k = addressIndex + 1; k < largest.length; k++) {
      double turn = PoseMath.wrap(PoseMath.azimuthRad(qLevelPelvis(k)) - addressAzimuthRad);
      largest[k] = Math.max(largest[k - 1], Math.abs(turn));
    }
    return largest;
  }

  /** The largest turn away from address up to sample k, either way, rad. */
  double largestTurnRad(int k) {
    return largestTurnRad[k];
  }

  /**
   * Puts motion and mounting together.
   *
   * @param aimRad turn of the target line against the hip line at address, about z; 0 is square
   * @param aimSdRad its spread, rad
   * @param takeawayS when the swing begins, s on the recording's common axis
   */
  public static PelvisTrack of(
      UnitMotion motion,
      PelvisGeometry geometry,
      Handedness handed,
      double aimRad,
      double aimSdRad,
      double takeawayS) {
    return new PelvisTrack(motion, geometry, handed, aimRad, aimSdRad, takeawayS);
  }

  private static DMatrixRMaj factor(UnitMotion motion, PelvisGeometry geometry, double aimSdRad) {
    int p = motion.parameters();
    DMatrixRMaj covariance = new DMatrixRMaj(p + 7, p + 7);
    CommonOps_DDRM.insert(new DMatrixRMaj(motion.covariance()), covariance, 0, 0);
    CommonOps_DDRM.insert(new DMatrixRMaj(geometry.covariance()), covariance, p, p);
    covariance.set(p + 6, p + 6, aimSdRad * aimSdRad);
    for (int i = 0; i < p + 7; i++) {
      covariance.add(i, i, 1e-16);
    }
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(p + 7, true);
    if (!cholesky.decompose(covariance)) {
      throw new IllegalStateException("covariance of the motion is not positive definite");
    }
    return cholesky.getT(null);
  }

  public int size() {
    return motion.size();
  }

  public double timeS(int k) {
    return motion.timeS(k);
  }

  /** First sample at or after the instant; the last sample where there is none. */
  public int indexAt(double instantS) {
    return TimeAxis.indexAt(motion::timeS, motion.size() - 1, instantS);
  }

  /** The sample nearest to the instant. */
  int nearest(double instantS) {
    int after = indexAt(instantS);
    boolean isBefore = after > 0 && instantS - timeS(after - 1) < timeS(after) - instantS;
    return isBefore ? after - 1 : after;
  }

  /** The gap that holds an instant. */
  Optional<Bridge> gapAt(double instantS) {
    return motion.bridges().stream()
        .filter(b -> b.lengthS() > SPOKEN_OF_S)
        .filter(b -> b.holds(instantS))
        .findFirst();
  }

  /** The longest step from sample to sample in a span, s. */
  double longestStepS(double fromS, double toS) {
    double longest = 0;
    for (int k = Math.max(1, indexAt(fromS)); k < size() && timeS(k - 1) < toS; k++) {
      longest = Math.max(longest, timeS(k) - timeS(k - 1));
    }
    return longest;
  }

  /** Whether samples are missing between the address and an instant, so that it shows. */
  boolean hasGapBefore(double instantS) {
    return motion.bridges().stream()
        .filter(b -> b.lengthS() > SPOKEN_OF_S)
        .anyMatch(b -> b.afterS() > timeS(addressIndex) && b.beforeS() < instantS);
  }

  private Quaternion qLevelPelvis(int k) {
    return motion.qLevelUnit(k).times(geometry.qUnitPelvis());
  }

  private Vector3 midHipM(int k) {
    return motion.positionM(k).plus(motion.qLevelUnit(k).rotate(geometry.leverArmUnitM()));
  }

  /** Pose of sample k since address. */
  public PelvisPose pose(int k) {
    return PelvisPose.of(
        PoseMath.pose(
            h, qLevelPelvis(k), midHipM(k).minus(addressMidHipM), addressAzimuthRad, aimRad));
  }

  /** Rate of change of the pose at sample k, per s, by central difference over about 20 ms. */
  public double[] poseRate(int k) {
    int from = Math.min(k, indexAt(timeS(k) - 0.01));
    int to = Math.min(size() - 1, Math.max(from + 1, indexAt(timeS(k) + 0.01)));
    // beside a gap the side that has samples speaks alone
    if (timeS(to) - timeS(k) > BESIDE_S && from < k) {
      to = k;
    }
    if (timeS(k) - timeS(from) > BESIDE_S && to > k) {
      from = k;
    }
    double[] a = pose(from).toArray();
    double[] b = pose(to).toArray();
    double[] rate = new double[PelvisPose.SIZE];
    for (int i = 0; i < rate.length; i++) {
      double change = i == 0 ? PoseMath.wrap(b[i] - a[i]) : b[i] - a[i];
      rate[i] = change / (timeS(to) - timeS(from));
    }
    return rate;
  }

  /**
   * How one standard deviation of each independent error source moves the pose of sample k: {@link
   * PelvisPose#SIZE} rows, a column a source. The same column means the same source at every k.
   */
  public double[][] errorColumns(int k) {
    return errorColumns(k, posePerInput(k));
  }

  /**
   * The same, and six columns of how a unit that has shifted on the skin moves the pose: turned
   * about the level axes (which carries mid-hip along on the lever arm), then moved along them.
   */
  double[][] errorColumns(int k, SkinShift shift) {
    double[][] byInput = posePerInput(k);
    double[][] columns = errorColumns(k, byInput);
    int n = columns[0].length;
    for (int row = 0; row < columns.length; row++) {
      columns[row] = Arrays.copyOf(columns[row], n + 6);
      for (int c = 0; c < 6; c++) {
        columns[row][n + c] = byInput[row][c] * (c < 3 ? shift.angleRad() : shift.placeM());
      }
    }
    return columns;
  }

  private double[][] errorColumns(int k, double[][] byInput) {
    double[][] now = motion.sensitivity(k);
    double[][] address = motion.sensitivity(addressIndex);
    int p = motion.parameters();
    DMatrixRMaj derivative = new DMatrixRMaj(PelvisPose.SIZE, p + 7);
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      double[] d = byInput[row];
      for (int c = 0; c < p; c++) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
          sum += d[i] * now[i][c] + d[3 + i] * now[6 + i][c];
          sum += d[6 + i] * address[i][c] + d[9 + i] * address[6 + i][c];
        }
        derivative.set(row, c, sum);
      }
      for (int i = 0; i < 7; i++) {
        derivative.set(row, p + i, d[12 + i]);
      }
    }
    DMatrixRMaj columns = new DMatrixRMaj(PelvisPose.SIZE, p + 7);
    CommonOps_DDRM.mult(derivative, factor, columns);
    double[][] out = new double[PelvisPose.SIZE][p + 7];
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      System.arraycopy(columns.data, row * (p + 7), out[row], 0, p + 7);
    }
    return out;
  }

  /** Derivative of the pose by its inputs, by central differences. */
  private double[][] posePerInput(int k) {
    double[][] out = new double[PelvisPose.SIZE][INPUTS];
    for (int input = 0; input < INPUTS; input++) {
      double[] plus = poseWith(k, input, STEP);
      double[] minus = poseWith(k, input, -STEP);
      for (int row = 0; row < PelvisPose.SIZE; row++) {
        double change = row == 0 ? PoseMath.wrap(plus[0] - minus[0]) : plus[row] - minus[row];
        out[row][input] = change / (2 * STEP);
      }
    }
    return out;
  }

  /** Pose of sample k with one input moved; the address is seen at the middle of its stretch. */
  private double[] poseWith(int k, int input, double step) {
    int three = input / 3;
    Vector3 by = AXES[input % 3].times(step);
    Quaternion qBy = Quaternion.fromRotationVector(three % 2 == 0 ? by : Vector3.ZERO);
    Quaternion qUnitPelvis =
        three == 4 ? geometry.qUnitPelvis().times(qBy) : geometry.qUnitPelvis();
    Vector3 arm = three == 5 ? geometry.leverArmUnitM().plus(by) : geometry.leverArmUnitM();
    Quaternion qNow = three == 0 ? qBy.times(motion.qLevelUnit(k)) : motion.qLevelUnit(k);
    Quaternion qThen = motion.qLevelUnit(addressIndex);
    Quaternion qAddress = three == 2 ? qBy.times(qThen) : qThen;
    Vector3 now = motion.positionM(k).plus(three == 1 ? by : Vector3.ZERO);
    Vector3 then = motion.positionM(addressIndex).plus(three == 3 ? by : Vector3.ZERO);
    return PoseMath.pose(
        h,
        qNow.times(qUnitPelvis),
        now.plus(qNow.rotate(arm)).minus(then.plus(qAddress.rotate(arm))),
        PoseMath.azimuthRad(qAddress.times(qUnitPelvis)),
        three == 6 ? aimRad + step : aimRad);
  }
}
