package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Two made-up segments: the forearm stands still for 1 s, then swings up and rolls; the hand bends
 * and deviates against it by known angles. Rates from attitudes 1e-5 s apart; the accelerometer
 * shows gravity alone.
 */
class TwoAxisJointTest {

  private static final double RATE_HZ = 200;
  private static final SkinSlip SLIP = new SkinSlip(1, 1.8, 2.05, 2.7);

  /** 0 before 1 s, then a smooth way to 1 at 2.1 s. */
  private static double way(double t) {
    double u = Math.max(0, Math.min(1, (t - 1) / 1.1));
    return u * u * (3 - 2 * u);
  }

  private static double flexionRad(double t) {
    return Math.toRadians(-5 + 20 * way(t));
  }

  private static double deviationRad(double t) {
    return Math.toRadians(-15 - 60 * Math.sin(Math.PI * way(t)));
  }

  private static Quaternion qGroundForearm(double t) {
    return Quaternion.aboutZ(0.4)
        .times(Quaternion.aboutY(Math.toRadians(60 - 110 * Math.sin(Math.PI * way(t)))))
        .times(Quaternion.aboutX(Math.toRadians(100 * Math.sin(Math.PI * way(t)))));
  }

  private static Quaternion qGroundHand(double t) {
    return qGroundForearm(t)
        .times(Quaternion.aboutY(flexionRad(t)))
        .times(Quaternion.aboutZ(deviationRad(t)));
  }

  private static UnitStream unit(
      BodyPoint point, DoubleFunction<Quaternion> qGroundSegment, Quaternion qSegmentUnit) {
    int n = (int) (2.2 * RATE_HZ);
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    double h = 1e-5;
    for (int i = 0; i < n; i++) {
      time[i] = i / RATE_HZ;
      Quaternion now = qGroundSegment.apply(time[i] - h).times(qSegmentUnit);
      Quaternion next = qGroundSegment.apply(time[i] + h).times(qSegmentUnit);
      Vector3 rate = now.conjugate().times(next).rotationVector().times(1 / (2 * h));
      Vector3 up = next.conjugate().rotate(Vector3.Z.times(9.81));
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = rate.get(axis);
        accel[axis][i] = up.get(axis);
      }
    }
    UnitFacts facts =
        new UnitFacts(point, "", RATE_HZ, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, true);
    return new UnitStream(facts, time, accel, gyro);
  }

  private static LevelTrack track(UnitStream stream) {
    return LevelTrack.of(
        PeakRepair.repair(stream), Vector3.ZERO, LevelTrack.Spreads.CALIBRATED, 0.2, 0.9);
  }

  private static TwoAxisJoint fit(Quaternion forearmOff, Quaternion handOff, double lateS) {
    UnitStream forearm = unit(BodyPoint.LEAD_FOREARM, TwoAxisJointTest::qGroundForearm, forearmOff);
    UnitStream hand =
        unit(BodyPoint.LEAD_HAND, TwoAxisJointTest::qGroundHand, handOff).shifted(lateS);
    double syncSdS = lateS == 0 ? 1e-4 : 0.005;
    return TwoAxisJoint.fit(
        track(forearm), track(hand), WristAlignment.nominal(), SLIP, 0.75, 2.05, syncSdS);
  }

  private static double worstChangeDeg(TwoAxisJoint joint) {
    int reference = (int) (0.8 * RATE_HZ);
    double worst = 0;
    for (int k = reference; k < 2.05 * RATE_HZ; k++) {
      double seen = joint.angles(k).deviationRad() - joint.angles(reference).deviationRad();
      double t = joint.timeS(k);
      double truth = deviationRad(t) - deviationRad(joint.timeS(reference));
      worst = Math.max(worst, Math.toDegrees(Math.abs(seen - truth)));
    }
    return worst;
  }

  @Test
  void theAnglesOfAPerfectJointAreRecoveredWithoutAnyCommonHeading() {
    // Given: units as drawn; each level frame has its own heading. Expect: the deviation's change
    // over a swing of 60 deg. Within 0.1 deg: trapezoid steps of 5 ms at 300 deg/s.
    TwoAxisJoint joint = fit(Quaternion.IDENTITY, Quaternion.IDENTITY, 0);
    assertThat(worstChangeDeg(joint)).isLessThan(0.1);
    int k = (int) (1.5 * RATE_HZ);
    assertThat(joint.angles(k).flexionRad())
        .isCloseTo(flexionRad(joint.timeS(k)), within(Math.toRadians(0.1)));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void strappingErrorsChangeTheAnglesByLessThanTheStatedSpread(long seed) {
    // Given: each unit off by 4 deg about each axis. Expect: the change of deviation keeps within
    // 2.5 of its own standard deviations (five draws), and within the 4 deg of the strapping.
    Random random = new Random(seed);
    double sd = Math.toRadians(4);
    TwoAxisJoint joint =
        fit(
            Quaternion.fromRotationVector(draw(random, sd)),
            Quaternion.fromRotationVector(draw(random, sd)),
            0);
    int reference = (int) (0.8 * RATE_HZ);
    int k = (int) (1.55 * RATE_HZ);
    double[] row = joint.deviationRow(k);
    double[] before = joint.deviationRow(reference);
    for (int i = 0; i < row.length; i++) {
      row[i] -= before[i];
    }
    double error =
        joint.angles(k).deviationRad()
            - joint.angles(reference).deviationRad()
            - deviationRad(joint.timeS(k))
            + deviationRad(joint.timeS(reference));
    assertThat(Math.abs(error)).as("seed " + seed).isLessThan(2.5 * joint.sdRad(row));
    assertThat(worstChangeDeg(joint)).as("seed " + seed).isLessThan(4);
  }

  private static Vector3 draw(Random random, double sd) {
    return new Vector3(
        sd * random.nextGaussian(), sd * random.nextGaussian(), sd * random.nextGaussian());
  }

  @Test
  void aClockThatIsLateByFourMillisecondsIsPartlySeenAndItsSpreadStated() {
    // Given: the hand's samples stamped 4 ms late, clocks known to 5 ms. Expect: the change of
    // deviation still within 2 deg: 4 ms at 300 deg/s would be 1.2 deg if nothing were seen.
    assertThat(worstChangeDeg(fit(Quaternion.IDENTITY, Quaternion.IDENTITY, 0.004))).isLessThan(2);
  }

  @Test
  void aShaftHeldAtAnAngleInTheHandShowsTheSameChangeOfTheWrist() {
    // Given: in place of the hand a shaft that lies at 40 deg to it in the plane of cocking.
    // Expect: the change of deviation of the wrist. Within 0.1 deg, as with the hand itself.
    UnitStream forearm =
        unit(BodyPoint.LEAD_FOREARM, TwoAxisJointTest::qGroundForearm, Quaternion.IDENTITY);
    UnitStream shaft =
        unit(
            BodyPoint.CLUB_SHAFT,
            t -> qGroundHand(t).times(Quaternion.aboutZ(Math.toRadians(-40))),
            Quaternion.IDENTITY);
    WristAlignment drawn = WristAlignment.nominalShaft();
    assertThat(
            worstChangeDeg(
                TwoAxisJoint.fit(track(forearm), track(shaft), drawn, SLIP, 0.75, 2.05, 1e-4)))
        .isLessThan(0.1);
  }

  private static HandOnShaft together(DoubleFunction<Quaternion> qHandShaft) {
    UnitStream hand =
        unit(BodyPoint.LEAD_HAND, TwoAxisJointTest::qGroundHand, Quaternion.aboutX(0.1));
    UnitStream shaft =
        unit(
            BodyPoint.CLUB_SHAFT,
            t -> Quaternion.aboutZ(0.8).times(qGroundHand(t)).times(qHandShaft.apply(t)),
            Quaternion.aboutY(0.2));
    UnitMount mount = UnitMount.onSkin().posed(Quaternion.aboutX(-0.1), Math.toRadians(1));
    return new HandOnShaft(track(hand), track(shaft), mount, 0.9, 2.05, 1e-4);
  }

  @Test
  void aShaftHeldFirmlyDoesNotTurnAgainstTheHandWhateverTheHeadingsAndMountings() {
    // Given: hand and shaft rigid together, mounted anyhow, level frames of different headings.
    // Expect: no turn. Within 0.1 deg: trapezoid steps of 5 ms at 300 deg/s.
    HandOnShaft pair = together(t -> Quaternion.aboutZ(0.6));
    assertThat(Math.toDegrees(pair.turnHandRad(1.8).norm())).isLessThan(0.1);
    assertThat(pair.disagree()).isFalse();
  }

  @Test
  void aShaftThatTurnsInTheHandIsSeenTurningAboutTheHandsOwnAxis() {
    // Given: the shaft turns by 12 deg about hand z over the swing. Expect: 12 deg, called out.
    // Within 0.5 deg: the common heading bends a little towards the turn.
    HandOnShaft pair =
        together(t -> Quaternion.aboutZ(Math.toRadians(12) * way(t)).times(Quaternion.aboutX(0.5)));
    assertThat(Math.toDegrees(pair.turnHandRad(2.05).z())).isCloseTo(12 * way(2.05), within(0.5));
    assertThat(pair.disagree()).isTrue();
  }

  private static Recording posed(Quaternion forearmOff, Quaternion handOff) {
    DoubleFunction<Quaternion> hanging = t -> Quaternion.aboutY(Math.PI / 2);
    DoubleFunction<Quaternion> cocking =
        t -> hanging.apply(t).times(Quaternion.aboutZ(0.4 * Math.sin(4 * Math.PI * way(t))));
    return new Recording(
        "steps",
        Player.unmeasured("p", Handedness.RIGHT),
        List.of(
            unit(BodyPoint.LEAD_FOREARM, hanging, forearmOff),
            unit(BodyPoint.LEAD_HAND, cocking, handOff)),
        List.of(new Mark(0, 0.9, "neutral-wrist", "", ""), new Mark(1, 1.1, "cocking", "", "")));
  }

  @Test
  void theNeutralPoseShowsTheLongAxisOfEachUnit() {
    // Given: the hand unit nods by 8 deg about its y axis. Expect: its x axis put right, exactly;
    // the mean of samples at rest. Within 1e-9 rad.
    Recording recording = posed(Quaternion.IDENTITY, Quaternion.aboutY(Math.toRadians(8)));
    WristAlignment found =
        WristSteps.of(recording, RestBiases.of(recording), WristSteps.NONE).alignment();
    Vector3 bone = found.qHandUnitHand().rotate(Vector3.X);
    Vector3 truth = Quaternion.aboutY(Math.toRadians(-8)).rotate(Vector3.X);
    assertThat(bone.minus(truth).norm()).isLessThan(1e-9);
    assertThat(found.posed()).isTrue();
  }

  @Test
  void aCockingMovementFindsHalfOfAHandUnitsTurnAboutTheBone() {
    // Given: the hand unit turned by 10 deg about the bone, which gravity cannot see in the pose.
    // Expect: drawing (5 deg) and movement (5 deg) weigh the same, so half of it is corrected.
    // Within 0.3 deg: the relative rate of a still forearm is exact.
    Recording recording = posed(Quaternion.IDENTITY, Quaternion.aboutX(Math.toRadians(10)));
    WristSteps steps = WristSteps.of(recording, RestBiases.of(recording), WristSteps.NONE);
    Vector3 z = steps.alignment().qHandUnitHand().rotate(Vector3.Z);
    double corrected = Math.toDegrees(Math.atan2(z.y(), z.z()));
    assertThat(corrected).isCloseTo(5, within(0.3));
    assertThat(steps.results()).allMatch(StepResult::used);
  }

  @Test
  void aHandHeldBentInThePoseIsSentBackWithAdvice() {
    // Given: the hand 40 deg off its drawing. Expect: not used, the drawing kept, advice given.
    Recording recording = posed(Quaternion.IDENTITY, Quaternion.aboutY(Math.toRadians(40)));
    WristSteps steps = WristSteps.of(recording, RestBiases.of(recording), WristSteps.NONE);
    assertThat(steps.results().get(0).used()).isFalse();
    assertThat(steps.results().get(0).why().code()).isEqualTo(StepReason.NEUTRAL_WRIST_FAR);
    assertThat(steps.alignment().posed()).isFalse();
  }

  private static double flexionSdAtAddressDeg(LevelTrack.Spreads spreads, double hangDeg) {
    double unit = spreads.tiltRad();
    double forearmSd = Math.hypot(Math.toRadians(1.5), unit);
    double handSd = Math.hypot(Math.toRadians(2), forearmSd);
    WristAlignment posed =
        new WristAlignment(
            UnitMount.onSkin().posed(Quaternion.IDENTITY, forearmSd),
            UnitMount.onSkin().posed(Quaternion.IDENTITY, handSd),
            Math.toRadians(hangDeg),
            WristAlignment.Source.POSE);
    PeakRepair.Repaired forearm =
        PeakRepair.repair(
            unit(BodyPoint.LEAD_FOREARM, TwoAxisJointTest::qGroundForearm, Quaternion.IDENTITY));
    PeakRepair.Repaired hand =
        PeakRepair.repair(
            unit(BodyPoint.LEAD_HAND, TwoAxisJointTest::qGroundHand, Quaternion.IDENTITY));
    TwoAxisJoint joint =
        TwoAxisJoint.fit(
            LevelTrack.of(forearm, Vector3.ZERO, spreads, 0.2, 0.9),
            LevelTrack.of(hand, Vector3.ZERO, spreads, 0.2, 0.9),
            posed,
            SLIP,
            0.75,
            2.05,
            1e-4);
    return Math.toDegrees(joint.sdRad(joint.flexionRow((int) (0.8 * RATE_HZ))));
  }

  @Test
  void anArmThatHungAskewInThePoseDoesNotMakeTheWristUnsure() {
    // Given: the arm hangs off the vertical by 1.5 deg (1 SD), which both units see; the wrist that
    // feels straight is off by 2 deg, and two calibrated units are levelled to 0.4 deg each.
    // Expect:
    // flexion at address known to the root of their squares, 2.08 deg, or what the forearm's lean
    // of
    // 60 deg and the skew of the axes (3 deg) add, at most a fourth; taken as errors of each unit
    // apart it is worse.
    double shared = flexionSdAtAddressDeg(LevelTrack.Spreads.CALIBRATED, 1.5);
    assertThat(shared).isBetween(0.5, 2.6);
    WristAlignment drawn = WristAlignment.nominal();
    assertThat(drawn.hangSdRad()).isZero();
    assertThat(flexionSdAtAddressDeg(LevelTrack.Spreads.CALIBRATED, 0)).isGreaterThan(1.1 * shared);
  }

  @Test
  void anAccelerometersBiasTakesItselfAwayBetweenPoseAndAddress() {
    // Given: raw units, 1.6 deg of tilt by their accelerometers, in the pose and at address alike;
    // the forearm hangs 60 deg below level there, so half to all of it cancels. Expect: flexion at
    // address not much worse than with calibrated units; apart, the four errors of 1.6 deg would
    // make it 3.8 deg.
    assertThat(flexionSdAtAddressDeg(LevelTrack.Spreads.RAW, 1.5)).isBetween(0.5, 2.8);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void theHeightOfABoneMovesWithEachUnknownAsItsRowSays(boolean ofHand) {
    // Given: a posed pair half way up the swing. Expect: the row, by moving one unknown after the
    // other by a hundredth of its spread either way. Within 1e-3 of the largest: second order.
    RelativeAttitude pair = posedPair();
    int k = (int) (1.35 * RATE_HZ);
    double[] row = pair.elevationRow(pair.at(k, new double[pair.parameters()]), ofHand);
    double largest = Arrays.stream(row).map(Math::abs).max().orElseThrow();
    assertThat(largest).isGreaterThan(0.001);
    for (int i = 0; i < row.length; i++) {
      double[] more = new double[row.length];
      double[] less = new double[row.length];
      more[i] = 0.01;
      less[i] = -0.01;
      double moved =
          (RelativeAttitude.elevationRad(pair.at(k, more), ofHand)
                  - RelativeAttitude.elevationRad(pair.at(k, less), ofHand))
              / 0.02;
      // the hand's clock moves it, too, but not as an error of the level
      if (i != pair.headingAt() + 7) {
        assertThat(row[i]).as("unknown " + i).isCloseTo(moved, within(1e-3 * largest));
      }
    }
  }

  private static RelativeAttitude posedPair() {
    double axisSd = Math.toRadians(2.5);
    WristAlignment posed =
        new WristAlignment(
            UnitMount.onSkin().posed(Quaternion.IDENTITY, axisSd),
            UnitMount.onSkin().posed(Quaternion.IDENTITY, axisSd),
            Math.toRadians(1.5),
            WristAlignment.Source.POSE);
    return new RelativeAttitude(
        track(unit(BodyPoint.LEAD_FOREARM, TwoAxisJointTest::qGroundForearm, Quaternion.IDENTITY)),
        track(unit(BodyPoint.LEAD_HAND, TwoAxisJointTest::qGroundHand, Quaternion.IDENTITY)),
        posed,
        SLIP,
        0.002);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.8, 1.25, 1.45, 1.7, 1.95})
  void theHandTurnsAgainstTheForearmWithEachUnknownAsItsRowSays(double timeS) {
    // Given: a posed pair, both turning about all axes, at address and four moments of the swing,
    // every unknown already off by a part of its spread. Expect: the rows along three axes of the
    // hand, by moving one unknown after the other by a hundredth either way. Within 2 % plus a
    // hundredth of the largest: the rows are of first order, and small turns of up to a degree
    // about several axes do not quite add up.
    RelativeAttitude pair = posedPair();
    double[] z = new double[pair.parameters()];
    for (int i = 0; i < z.length; i++) {
      z[i] = 0.05 * Math.sin(i + 1.0);
    }
    int k = (int) (timeS * RATE_HZ);
    Quaternion here = pair.at(k, z).qForearmHand();
    for (Vector3 along : List.of(Vector3.X, Vector3.Y, Vector3.Z)) {
      double[] row = pair.turnAlong(pair.at(k, z), along);
      double[] moved = new double[row.length];
      double largest = 0;
      for (int i = 0; i < row.length; i++) {
        double size = i == pair.headingAt() ? 0.001 : 0.01;
        moved[i] =
            turnHand(pair, k, z, here, i, size)
                    .minus(turnHand(pair, k, z, here, i, -size))
                    .dot(along)
                / (2 * size);
        largest = i == pair.headingAt() ? largest : Math.max(largest, Math.abs(moved[i]));
      }
      for (int i = 0; i < row.length; i++) {
        assertThat(row[i])
            .as("unknown " + i)
            .isCloseTo(moved[i], within(0.02 * Math.abs(moved[i]) + 0.01 * largest));
      }
    }
  }

  /** Small turn of the hand, hand axes, rad, when one unknown moves. */
  private static Vector3 turnHand(
      RelativeAttitude pair, int k, double[] z, Quaternion here, int unknown, double by) {
    double[] other = z.clone();
    other[unknown] += by;
    return here.conjugate().times(pair.at(k, other).qForearmHand()).rotationVector();
  }
}
