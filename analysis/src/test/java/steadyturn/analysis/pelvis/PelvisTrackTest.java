package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.ingest.sample.Handedness;

/** The pose of a pelvis and how errors reach it, for both hands, on a motion of exact truth. */
class PelvisTrackTest {

  private static final SkinShift NO_SKIN = new SkinShift(0, 0);

  private static double[] difference(PelvisTrack moved, PelvisTrack track, int k, double by) {
    double[] a = moved.pose(k).toArray();
    double[] b = track.pose(k).toArray();
    double[] out = new double[6];
    for (int i = 0; i < 6; i++) {
      out[i] = (a[i] - b[i]) / by;
    }
    return out;
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void thePoseIsTheTruthFreeOfHandedness(Handedness handed) {
    // Given: heading, mounting and aim of any kind. Expect: the pose put in at each sample. Within
    // 1e-9: rounding; the address is still.
    PelvisTrack track = MadePelvis.of(handed).track();
    for (int k = 0; k < track.size(); k += 7) {
      double[] truth = MadePelvis.truth(track.timeS(k)).toArray();
      assertThat(track.pose(k).toArray()).containsExactly(truth, within(1e-9));
    }
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theRateIsTheSlopeOfTheTruth(Handedness handed) {
    // Expect: central differences of the truth over 20 ms. Within 1e-9.
    PelvisTrack track = MadePelvis.of(handed).track();
    double[] a = MadePelvis.truth(1.49).toArray();
    double[] b = MadePelvis.truth(1.51).toArray();
    double[] rate = track.poseRate(300);
    for (int i = 0; i < 6; i++) {
      assertThat(rate[i]).isCloseTo((b[i] - a[i]) / 0.02, within(1e-8));
    }
    double[] first = track.poseRate(track.size() - 1);
    double[] end = MadePelvis.truth(3).toArray();
    double[] before = MadePelvis.truth(2.99).toArray();
    assertThat(first[1]).isCloseTo((end[1] - before[1]) / 0.01, within(1e-8));
  }

  /** Derivative of the pose by each of the nine errors, by tracks that are off by it. */
  private static RealMatrix slopes(Handedness handed, int k) {
    RealMatrix j = MatrixUtils.createRealMatrix(6, 9);
    for (int e = 0; e < 9; e++) {
      double[] put = new double[9];
      put[e] = 1e-6;
      double[] minus = new double[9];
      minus[e] = -1e-6;
      PelvisTrack plusTrack = MadePelvis.of(handed).with(put).track();
      PelvisTrack minusTrack = MadePelvis.of(handed).with(minus).track();
      j.setColumn(e, difference(plusTrack, minusTrack, k, 2e-6));
    }
    return j;
  }

  @ParameterizedTest
  @CsvSource({"RIGHT,400", "RIGHT,460", "RIGHT,290", "LEFT,400", "LEFT,470"})
  void theErrorColumnsCarryTheJointCovarianceOfMotionMountingAndAim(Handedness handed, int k) {
    // Given: sensitivities that differ between address and now. Expect: J S J' with J by tracks
    // that are off by each error. Within 1 % of each size: the address stands at the middle of its
    // stretch.
    RealMatrix j = slopes(handed, k);
    RealMatrix s = MatrixUtils.createRealMatrix(MadePelvis.jointCovariance());
    RealMatrix expected = j.multiply(s).multiply(j.transpose());
    PelvisTrack track = MadePelvis.of(handed).track();
    RealMatrix columns = MatrixUtils.createRealMatrix(track.errors().columns(k));
    RealMatrix found = columns.multiply(columns.transpose());
    for (int a = 0; a < 6; a++) {
      for (int b = 0; b < 6; b++) {
        double size = Math.sqrt(expected.getEntry(a, a) * expected.getEntry(b, b)) + 1e-9;
        assertThat(found.getEntry(a, b))
            .as(a + "," + b)
            .isCloseTo(expected.getEntry(a, b), within(0.01 * size));
      }
    }
  }

  @Test
  void skinTurnsTheUnitAndMovesItWhereItIsNow() {
    // Given: 0.02 rad about each level axis and 5 mm along each. Expect: six more columns; the last
    // three move mid-hip by 5 mm along level x, y, z, that is by the directions of target and ball;
    // the third turns the hip line by 0.02 rad.
    PelvisTrack track = MadePelvis.of(Handedness.LEFT).track();
    double[][] without = track.errors().columns(400);
    double[][] with = track.errors().columns(400, new SkinShift(0.02, 0.005));
    int n = without[0].length;
    assertThat(with[0]).hasSize(n + 6);
    for (int row = 0; row < 6; row++) {
      assertThat(Arrays.copyOf(with[row], n)).containsExactly(without[row], within(1e-12));
    }
    double a = MadePelvis.HEADING_RAD + MadePelvis.AIM_RAD;
    assertThat(with[0][n + 2]).isCloseTo(-0.02, within(1e-8));
    assertThat(with[1][n + 3]).isCloseTo(0.005 * Math.sin(a), within(1e-8));
    assertThat(with[1][n + 4]).isCloseTo(-0.005 * Math.cos(a), within(1e-8));
    assertThat(with[2][n + 3]).isCloseTo(0.005 * Math.cos(a), within(1e-8));
    assertThat(with[2][n + 4]).isCloseTo(0.005 * Math.sin(a), within(1e-8));
    assertThat(with[3][n + 5]).isCloseTo(0.005, within(1e-8));
    assertThat(with[3][n + 3]).isCloseTo(0, within(1e-8));
    // turned about level x by 0.02 rad: mid-hip rises by 0.02 times where it lies in y of the unit
    MadePelvis made = MadePelvis.of(Handedness.LEFT);
    double arm = made.qLevelUnit(400).rotate(made.geometry().leverArmUnitM()).y();
    assertThat(with[3][n]).isCloseTo(0.02 * arm, within(1e-8));
  }

  @Test
  void timesAreLookedUpAtAndNearestToAnInstant() {
    PelvisTrack track = MadePelvis.of(Handedness.RIGHT).track();
    assertThat(track.indexAt(0.5)).isEqualTo(100);
    assertThat(track.indexAt(0.501)).isEqualTo(101);
    assertThat(track.indexAt(-1)).isZero();
    assertThat(track.indexAt(99)).isEqualTo(600);
    assertThat(track.nearest(0.501)).isEqualTo(100);
    assertThat(track.nearest(0.504)).isEqualTo(101);
    assertThat(track.nearest(-1)).isZero();
    assertThat(track.largestTurnRad(100)).isZero();
    double top = Math.abs(MadePelvis.truth(1.9).turnRad());
    assertThat(track.largestTurnRad(380)).isCloseTo(top, within(1e-3));
    assertThat(track.largestTurnRad(600)).isGreaterThanOrEqualTo(track.largestTurnRad(380));
  }

  @Test
  void aSpreadHoldsPoseEventAndFunctions() {
    // Given: an event 2 ms after a sample, known to 4 ms, and skin that shows a turn early or late
    // by 2.5 ms. Expect: the pose carried on at its rate; variance of the columns and of the rate
    // times both; of a straight function of two components by hand.
    PelvisTrack track = MadePelvis.of(Handedness.RIGHT).track();
    SkinCourse skin = SkinCourse.of(NO_SKIN, List.of());
    PoseSpread spread = PoseSpread.at(track, 2.002, 0.004, skin);
    PoseSpread sample = PoseSpread.at(track, 400, skin);
    double[] rate = track.poseRate(400);
    for (int i = 0; i < 6; i++) {
      double expected = track.pose(400).toArray()[i] + 0.002 * rate[i];
      assertThat(spread.pose().toArray()[i]).isCloseTo(expected, within(1e-12));
      double variance =
          Math.pow(sample.sd(i), 2) + Math.pow(Math.hypot(0.004, 0.0025) * rate[i], 2);
      assertThat(spread.sd(i)).isCloseTo(Math.sqrt(variance), within(1e-9));
    }
    double both =
        4 * Math.pow(spread.sd(1), 2)
            + 9 * Math.pow(spread.sd(2), 2)
            - 12 * spread.covariance(1, 2);
    assertThat(spread.sd(p -> 2 * p.slideM() - 3 * p.thrustM()))
        .isCloseTo(Math.sqrt(both), within(1e-9));
    assertThat(sample.sd(p -> p.turnRad() * p.turnRad()))
        .isCloseTo(2 * Math.abs(sample.pose().turnRad()) * sample.sd(0), within(1e-7));
  }
}
