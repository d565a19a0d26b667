package steadyturn.analysis.pelvis;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.TimeAxis;

/**
 * The pelvis over one swing: its pose at every sample since address, and how each independent
 * source of error would move that pose ({@link PoseErrors}). Address is the mean over 250..30 ms
 * before the takeaway.
 */
public final class PelvisTrack {

  private static final double REFERENCE_FROM_S = 0.25;
  private static final double REFERENCE_TO_S = 0.03;

  /** A neighbour farther off lies behind a gap, s. */
  private static final double BESIDE_S = 0.025;

  /** Shorter gaps are in the spread and not spoken of, s. */
  private static final double SPOKEN_OF_S = 0.03;

  private final UnitMotion motion;
  private final PelvisGeometry geometry;
  private final int h;
  private final int addressIndex;
  private final double addressAzimuthRad;
  private final Vector3 addressMidHipM;
  private final double aimRad;
  private final double[] largestTurnRad;
  private final PoseErrors errors;

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
    this.errors = new PoseErrors(motion, geometry, h, aimRad, aimSdRad, addressIndex);
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

  /** How errors move the pose of any sample. */
  PoseErrors errors() {
    return errors;
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
}
