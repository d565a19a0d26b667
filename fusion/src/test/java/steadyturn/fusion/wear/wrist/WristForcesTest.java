package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.attitude.AngleDoubt;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/**
 * A forearm that moves and turns about all axes, and a hand that turns against it about all axes:
 * rigid bodies, so that what each unit feels is the second derivative of its place, and gravity.
 * Units at 1000 Hz that sit anyhow, 5 cm before and 2.5 cm off the wrist, 6 and 2 cm behind it.
 */
class WristForcesTest {

  private static final Quaternion ARM_SITS =
      Quaternion.fromRotationVector(new Vector3(0.3, -0.2, 0.25));
  private static final Quaternion HAND_SITS =
      Quaternion.fromRotationVector(new Vector3(-0.2, 0.15, -0.3));
  private static final Vector3 ARM_TO_WRIST_M = new Vector3(0.05, 0, -0.025);
  private static final Vector3 WRIST_TO_UNIT_M = new Vector3(0.06, 0, 0.02);
  private static final int FROM = 200;
  private static final int TO = 300;

  private static Quaternion forearm(double t) {
    return Quaternion.aboutZ(2 * Math.sin(3 * t))
        .times(Quaternion.aboutY(1.5 * Math.sin(4 * t)))
        .times(Quaternion.aboutX(Math.cos(5 * t)));
  }

  private static Quaternion bend(double t) {
    return Quaternion.aboutZ(2 * Math.sin(5 * t)).times(Quaternion.aboutY(0.5 * Math.cos(6 * t)));
  }

  private static Quaternion hand(double t) {
    return forearm(t).times(bend(t));
  }

  private static Vector3 forearmUnitPlace(double t) {
    return new Vector3(Math.sin(4 * t), 0.7 * Math.cos(5 * t), 0.4 * Math.sin(6 * t));
  }

  private static Vector3 handUnitPlace(double t, Vector3 armToWrist, Vector3 wristToUnit) {
    return forearmUnitPlace(t)
        .plus(forearm(t).rotate(armToWrist))
        .plus(hand(t).rotate(wristToUnit));
  }

  private static Vector3 felt(double t, Quaternion qUnit, DoubleFunction<Vector3> place) {
    double h = 1e-4;
    Vector3 acceleration =
        place
            .apply(t + h)
            .plus(place.apply(t - h))
            .minus(place.apply(t).times(2))
            .times(1 / (h * h));
    return qUnit.conjugate().rotate(acceleration.plus(Vector3.Z.times(9.80665)));
  }

  private static Vector3 rate(double t, DoubleFunction<Quaternion> attitude) {
    double h = 1e-6;
    return attitude
        .apply(t - h)
        .conjugate()
        .times(attitude.apply(t + h))
        .rotationVector()
        .times(0.5 / h);
  }

  private static Quaternion armUnit(double t) {
    return forearm(t).times(ARM_SITS.conjugate());
  }

  private static Quaternion handUnit(double t) {
    return hand(t).times(HAND_SITS.conjugate());
  }

  private static GyroTrack track(
      BodyPoint point, DoubleFunction<Quaternion> unit, DoubleFunction<Vector3> place) {
    return GyroTrack.of(
        MadeUnit.of(
            UnitFacts.plain(point, 1000),
            0.5,
            t -> rate(t, unit),
            t -> felt(t, unit.apply(t), place)),
        Vector3.ZERO);
  }

  private static double[][] predicted(double[] z) {
    WristAlignment known =
        new WristAlignment(
            new UnitMount(ARM_SITS, 0, 0, SkinSlip.SD_RAD, SkinSlip.SD_RAD),
            new UnitMount(HAND_SITS, 0, 0, SkinSlip.SD_RAD, SkinSlip.SD_RAD),
            0,
            WristAlignment.Source.COCKING);
    RateFromForce.Units units =
        new RateFromForce.Units(
            track(
                BodyPoint.LEAD_FOREARM,
                WristForcesTest::armUnit,
                WristForcesTest::forearmUnitPlace),
            track(
                BodyPoint.LEAD_HAND,
                WristForcesTest::handUnit,
                t -> handUnitPlace(t, ARM_TO_WRIST_M, WRIST_TO_UNIT_M)),
            Vector3.ZERO,
            1e9,
            known);
    PeakRepair.Cut later =
        new PeakRepair.Cut(2, 0.4, 0.45, true, new AngleDoubt(new double[0], new double[0]));
    // no rate is cut before sample 400, so the chain is not asked
    RateChain none = RateChain.begin(0.4, 0.45, 0, 0);
    return new WristForces(units, later, bend(FROM / 1000.0), FROM, 400).predicted(z, none, TO);
  }

  @Test
  void theHandFeelsWhatTwoRigidBodiesMakeItFeel() {
    // Expect: the force of the truth at each of the next 100 ms. Within 0.2 m/s^2, where it is up
    // to 80: rates are taken over 8 ms.
    double[][] found = predicted(new double[WristForces.UNKNOWNS]);
    for (int k = 0; k <= TO - FROM; k += 5) {
      double t = (FROM + k) / 1000.0;
      Vector3 truth = felt(t, handUnit(t), s -> handUnitPlace(s, ARM_TO_WRIST_M, WRIST_TO_UNIT_M));
      for (int axis = 0; axis < 3; axis++) {
        assertThat(found[k][axis]).as(axis + " at " + t).isCloseTo(truth.get(axis), within(0.2));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"3", "4", "5", "6", "7", "8"})
  void aUnitThatSitsFifteenMillimetresOffFeelsThatMuchMoreOfTheTurns(int unknown) {
    // Given: the place of the wrist, or of the hand unit, off by one spread of 15 mm (our choice)
    // along one axis of its segment. Expect: the force moves as that of the truth. Within 5 % of
    // it, as rates are taken over 8 ms.
    double[] off = new double[WristForces.UNKNOWNS];
    off[unknown] = 1;
    double[][] moved = predicted(off);
    double[][] found = predicted(new double[WristForces.UNKNOWNS]);
    Vector3[] axes = {Vector3.X, Vector3.Y, Vector3.Z};
    Vector3 by = axes[unknown % 3].times(0.015);
    Vector3 arm = unknown < 6 ? ARM_TO_WRIST_M.plus(by) : ARM_TO_WRIST_M;
    Vector3 hand = unknown < 6 ? WRIST_TO_UNIT_M : WRIST_TO_UNIT_M.plus(by);
    for (int k = 0; k <= TO - FROM; k += 20) {
      double t = (FROM + k) / 1000.0;
      Vector3 change =
          felt(t, handUnit(t), s -> handUnitPlace(s, arm, hand))
              .minus(felt(t, handUnit(t), s -> handUnitPlace(s, ARM_TO_WRIST_M, WRIST_TO_UNIT_M)));
      for (int axis = 0; axis < 3; axis++) {
        assertThat(moved[k][axis] - found[k][axis])
            .as(axis + " at " + t)
            .isCloseTo(change.get(axis), within(0.05 * change.norm()));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0", "1", "2"})
  void aHandThatIsTurnedByThreeDegreesFeelsTheForceTurned(int unknown) {
    // Given: the attitude at the start off by one spread of 3 deg (our choice) about one axis of
    // the unit. Expect: at the start what comes from the wrist is felt turned back by that.
    double[] off = new double[WristForces.UNKNOWNS];
    off[unknown] = 1;
    Vector3[] axes = {Vector3.X, Vector3.Y, Vector3.Z};
    Vector3 turn = axes[unknown].times(Math.toRadians(3));
    double t = FROM / 1000.0;
    Vector3 atWrist = felt(t, handUnit(t), s -> handUnitPlace(s, ARM_TO_WRIST_M, Vector3.ZERO));
    Vector3 change = Quaternion.fromRotationVector(turn.times(-1)).rotate(atWrist).minus(atWrist);
    double[][] moved = predicted(off);
    double[][] found = predicted(new double[WristForces.UNKNOWNS]);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(moved[0][axis] - found[0][axis])
          .isCloseTo(change.get(axis), within(0.02 * change.norm() + 0.01));
    }
  }
}
