package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Ride;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.ingest.sample.UnitStream;

class LessonEstimateTest {

  private static final Vector3 BIAS = new Vector3(0.03, -0.02, 0.025);

  private static SwingSpan swing(Ride ride, Vector3 accelBias) {
    UnitStream samples = ride.samples(200, 4, accelBias, Vector3.ZERO);
    return SwingSpan.of(
        samples, List.of(Anchor.address(0.02, 1.0), Anchor.finish(3.0, 3.9)), List.of());
  }

  private static Ride ride(double slideM, double turnRad) {
    return new Ride(
        t -> slideM * Ride.step(t, 1.1, 2.8),
        t -> -turnRad * Ride.step(t, 1.1, 1.9) + 2 * turnRad * Ride.step(t, 1.9, 2.8),
        new Vector3(-0.11, 0, 0.08));
  }

  private static double placeErrorM(UnitMotion motion, Ride ride, double atS) {
    int k = 0;
    while (motion.timeS(k) < atS) {
      k++;
    }
    Vector3 truth = ride.positionM(motion.timeS(k)).minus(ride.positionM(motion.timeS(0)));
    // the level frame's heading is the unit's own first heading, which here is that of the ground
    return motion.positionM(k).minus(truth).norm();
  }

  @Test
  void aConstantAccelerometerBiasIsFoundBetweenTwoRests() {
    // Given: exact samples with a bias of 3 mg on each axis. Expect: the path all the same.
    // Within 10 mm: the prior of 4 mg and the sway allowed at the rests leave that much; a plain
    // double
    // integration of 3 mg over 3 s is off by 130 mm.
    Ride ride = ride(0.1, 0.8);
    SwingFit fit =
        new LessonEstimate(UnitPriors.calibrated(), Ride.GRAVITY_MPS2)
            .fit(List.of(swing(ride, BIAS)), Vector3.ZERO)
            .get(0);
    assertThat(placeErrorM(fit.motion(), ride, 2.6)).isLessThan(0.010);
    assertThat(fit.cost()).isLessThan(fit.rows());
  }

  @Test
  void tenSwingsKnowTheUnitBetterThanOne() {
    // Given: ten different swings with the same biased unit. Expect: the spread the estimate states
    // for place at
    // 2.6 s shrinks against one swing alone. Within: at least by a tenth; nothing is gained if
    // parameters are not shared.
    SplittableRandom random = new SplittableRandom(7);
    List<SwingSpan> swings = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      swings.add(
          swing(ride(0.02 + 0.1 * random.nextDouble(), 0.5 + 0.5 * random.nextDouble()), BIAS));
    }
    LessonEstimate estimate = new LessonEstimate(UnitPriors.calibrated(), Ride.GRAVITY_MPS2);
    double one = spreadM(estimate.fit(swings.subList(0, 1), Vector3.ZERO).get(0).motion());
    double ten = spreadM(estimate.fit(swings, Vector3.ZERO).get(0).motion());
    assertThat(ten).isLessThan(0.9 * one);
  }

  private static double spreadM(UnitMotion motion) {
    int k = 0;
    while (motion.timeS(k) < 2.6) {
      k++;
    }
    double[] row = motion.sensitivity(k)[6];
    double sum = 0;
    for (int i = 0; i < row.length; i++) {
      for (int j = 0; j < row.length; j++) {
        sum += row[i] * motion.covariance()[i][j] * row[j];
      }
    }
    return Math.sqrt(sum);
  }

  @Test
  void oneBadSwingTeachesTheOthersNothing() {
    // Given: four good swings and one whose "rest" at the end still moves at 0.4 m/s. Expect: it is
    // set aside and the others keep their place, within 10 mm as one of them alone; its own is
    // stated no better than the 0.36 m it moved in its "rest".
    List<Ride> rides = List.of(ride(0.1, 0.8), ride(0.05, 0.7), ride(0.08, 0.9), ride(0.02, 0.6));
    List<SwingSpan> swings = new ArrayList<>();
    rides.forEach(r -> swings.add(swing(r, BIAS)));
    Ride runaway =
        new Ride(t -> 0.4 * Math.max(0, t - 1.1), t -> 0.5 * Ride.step(t, 1.1, 2), Vector3.ZERO);
    swings.add(swing(runaway, BIAS));
    List<SwingFit> fit =
        new LessonEstimate(UnitPriors.calibrated(), Ride.GRAVITY_MPS2).fit(swings, Vector3.ZERO);
    assertThat(fit.get(4).taught()).isFalse();
    for (int i = 0; i < 4; i++) {
      assertThat(fit.get(i).taught()).isTrue();
      assertThat(placeErrorM(fit.get(i).motion(), rides.get(i), 2.6)).isLessThan(0.010);
    }
    assertThat(spreadM(fit.get(4).motion())).isGreaterThan(0.36);
  }

  /** A ride of a unit that somebody turned onto its side before an instant, without its showing. */
  private static SwingSpan turnedUnseen(Ride ride, double beforeS) {
    UnitStream samples = ride.samples(200, 4, BIAS, Vector3.ZERO);
    double[] x = samples.accelColumnMps2(0);
    double[] z = samples.accelColumnMps2(2);
    for (int i = 0; i < samples.indexAt(beforeS); i++) {
      double up = z[i];
      z[i] = x[i];
      x[i] = up;
    }
    return SwingSpan.of(
        samples,
        List.of(Anchor.address(0.02, 0.4), Anchor.address(0.62, 1.0), Anchor.finish(3.0, 3.9)),
        List.of());
  }

  @Test
  void aUnitMovedUnseenBeforeASwingSpoilsNoOther() {
    // Given: six good swings and one before which the unit lay on its side, 90 deg from where it
    // is a moment later without having turned; by the usual estimate and by the rough one, which
    // never looks at its derivatives anew. Expect: that swing teaches nothing, all others do, and
    // their places and spreads are those of the six alone. Within 0.1 mm and a thousandth: the
    // swing is out before the first step. (Such a swing once carried all others to 1e44 m.)
    List<SwingSpan> good = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      good.add(swing(ride(0.03 + 0.01 * i, 0.6 + 0.05 * i), BIAS));
    }
    List<SwingSpan> all = new ArrayList<>(good);
    all.add(turnedUnseen(ride(0.1, 0.8), 0.5));
    LessonEstimate usual = new LessonEstimate(UnitPriors.raw(), Ride.GRAVITY_MPS2);
    for (LessonEstimate estimate : List.of(usual, usual.rough())) {
      List<SwingFit> alone = estimate.fit(good, Vector3.ZERO);
      List<SwingFit> beside = estimate.fit(all, Vector3.ZERO);
      assertThat(beside.get(6).taught()).isFalse();
      for (int i = 0; i < 6; i++) {
        assertThat(beside.get(i).taught()).isTrue();
        UnitMotion one = alone.get(i).motion();
        UnitMotion other = beside.get(i).motion();
        assertThat(other.positionM(520).minus(one.positionM(520)).norm()).isLessThan(1e-4);
        assertThat(spreadM(other)).isCloseTo(spreadM(one), withinPercentage(0.1));
      }
    }
  }

  @Test
  void stoppingAtSmallStepsLeavesThePathWhereManyRoundsPutIt() {
    // Given: six swings of a biased unit of which nothing is known, estimated as usual and by 12
    // whole rounds. Expect: the same place at 2.6 s. Within 0.002 of its own spread: a last step of
    // a tenth of a sigma leaves about a hundredth of itself.
    SplittableRandom random = new SplittableRandom(11);
    List<SwingSpan> swings = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      swings.add(
          swing(
              ride(0.02 + 0.1 * random.nextDouble(), 0.5 + 0.5 * random.nextDouble()),
              BIAS.times(8)));
    }
    LessonEstimate usual = new LessonEstimate(UnitPriors.raw(), Ride.GRAVITY_MPS2);
    LessonEstimate patient = new LessonEstimate(UnitPriors.raw(), Ride.GRAVITY_MPS2, 12, 0, 0);
    for (int i = 0; i < swings.size(); i++) {
      UnitMotion found = usual.fit(swings, Vector3.ZERO).get(i).motion();
      UnitMotion settled = patient.fit(swings, Vector3.ZERO).get(i).motion();
      double apartM = found.positionM(520).minus(settled.positionM(520)).norm();
      assertThat(apartM).isLessThan(0.002 * spreadM(settled));
    }
  }

  @Test
  void theFirstAttitudeStandsLevel() {
    // Given: force along an oblique axis. Expect: that axis points up in the level frame. Within
    // 1e-12: algebra.
    Vector3 up = new Vector3(0.3, -0.5, 0.8).unit();
    Vector3 level = Quaternion.levelling(up.times(9.8)).rotate(up);
    assertThat(level.z()).isCloseTo(1, within(1e-12));
  }

  /** The samples of a ride without what was shown between two instants. */
  private static UnitStream without(UnitStream samples, double fromS, double toS) {
    for (int axis = 0; axis < 3; axis++) {
      int to = samples.indexAt(toS);
      java.util.Arrays.fill(
          samples.gyroColumnRadPerS(axis), samples.indexAt(fromS), to, Double.NaN);
      java.util.Arrays.fill(samples.accelColumnMps2(axis), samples.indexAt(fromS), to, Double.NaN);
    }
    return samples;
  }

  @Test
  void aGapWidensWhatLiesBehindItAndHoldsTheTruth() {
    // Given: exact samples of a slide and turn, 0.12 s of the fastest part lost (1.85 s, where the
    // rate turns round). Expect: before the gap the place as without it; behind it the true place
    // within 3 of its spreads, which are wider than without the gap by a third, at least, and by
    // no more than three times: the charge goes by the slopes of the rate on both sides, which
    // gives 1.48. Within: 3 spreads, as this is one gap and not many.
    Ride ride = ride(0.1, 0.8);
    SwingSpan whole = swing(ride, BIAS);
    SwingSpan gapped =
        SwingSpan.of(without(whole.stream(), 1.79, 1.91), whole.anchors(), List.of());
    LessonEstimate estimate = new LessonEstimate(UnitPriors.calibrated(), Ride.GRAVITY_MPS2);
    UnitMotion without = estimate.fit(List.of(swing(ride, BIAS)), Vector3.ZERO).get(0).motion();
    UnitMotion with = estimate.fit(List.of(gapped), Vector3.ZERO).get(0).motion();
    assertThat(with.bridges()).hasSize(1);
    assertThat(placeErrorM(with, ride, 1.7)).isLessThan(0.010);
    double spread = spreadM(with);
    assertThat(spread / spreadM(without)).isBetween(4 / 3.0, 3.0);
    assertThat(placeErrorM(with, ride, 2.6)).isLessThan(3 * Math.sqrt(3) * spread);
  }

  @Test
  void whatSwingsTeachOfTheUnitIsWhatTheyWouldTeachInOneLargeSum() {
    // Given: three swings of one biased unit, solved with their own parameters eliminated (Schur
    // complement). Expect: the shared bias of the accelerometer comes out at what was put in, and
    // the same for each swing but for its small drift. Within 2 mg of 3 mg on the axes that turning
    // shows (x and y), prior 4 mg: with the complement's sign turned the swings would count
    // against what they know, and the bias would run away or stay at zero.
    SplittableRandom random = new SplittableRandom(3);
    List<SwingSpan> swings = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      swings.add(
          swing(ride(0.02 + 0.1 * random.nextDouble(), 0.8 + 0.7 * random.nextDouble()), BIAS));
    }
    List<SwingFit> fit =
        new LessonEstimate(UnitPriors.calibrated(), Ride.GRAVITY_MPS2).fit(swings, Vector3.ZERO);
    for (SwingFit swing : fit) {
      Vector3 found = swing.state().accelBiasMps2();
      assertThat(found.x()).isCloseTo(BIAS.x(), within(0.02));
      assertThat(found.y()).isCloseTo(BIAS.y(), within(0.02));
      assertThat(swing.covariance()[9][9]).isLessThan(0.039 * 0.039);
    }
  }
}
