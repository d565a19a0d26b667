package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.wear.StepReason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The tilt step. Given in all: front points 240 mm apart, depth 150 mm, back points 96 mm apart, so
 * that the ruler runs 72 mm aside on its 150 mm and has cos(atan(72 / 150)) = 0.9015 of the
 * pelvis's sine of tilt (plane geometry).
 */
class TiltStepTest {

  private static final double G = 9.80665;
  private static final Player PLAYER =
      new Player(
          "p",
          Handedness.LEFT,
          OptionalDouble.of(240),
          OptionalDouble.of(150),
          OptionalDouble.empty());

  private static UnitStream still(BodyPoint point, Vector3 forceMps2, double rateRadPerS) {
    return MadeUnit.of(
        UnitFacts.plain(point, 100),
        4,
        t -> new Vector3(0, rateRadPerS * Math.sin(20 * t), 0),
        t -> forceMps2);
  }

  /** The unit on the ruler of a pelvis tilted so far, x to the front, rolled by 40 deg. */
  private static UnitStream ruler(double tiltDeg) {
    double slope = Math.asin(0.90149 * Math.sin(Math.toRadians(tiltDeg)));
    double roll = Math.toRadians(40);
    Vector3 up =
        new Vector3(
            -Math.sin(slope), Math.cos(slope) * Math.sin(roll), Math.cos(slope) * Math.cos(roll));
    return still(BodyPoint.LEAD_HAND, up.times(G), 0);
  }

  private static final UnitStream WORN = still(BodyPoint.PELVIS, new Vector3(G, 0, 0), 0);

  @ParameterizedTest
  @ValueSource(doubles = {-5, 0, 10, 20})
  void theTiltIsThatOfThePelvisNotOfTheRuler(double tiltDeg) {
    // Expect: the tilt that was laid. Within 0.01 deg: the 0.90149 above has five digits.
    TiltStep step = TiltStep.of(ruler(tiltDeg), WORN, 1, 3);
    assertThat(step.result().used()).isTrue();
    assertThat(Math.toDegrees(step.tiltRad(PLAYER))).isCloseTo(tiltDeg, within(0.01));
    assertThat(step.forceUnitMps2().x()).isCloseTo(G, within(1e-9));
  }

  @Test
  void itsSpreadIsThatOfTwoTouchedPointsTheCaseAndTheBias() {
    // Given: raw units, whose bias is worth 1.6 deg of tilt. Expect: sqrt(1.6^2 + 1^2 + 2.61^2) =
    // 3.22 deg, 2.61 = atan(5 sqrt 2 / 155). Within 0.02.
    double sd = Math.toDegrees(TiltStep.of(ruler(10), WORN, 1, 3).rulerSdRad());
    assertThat(sd).isCloseTo(3.22, within(0.02));
  }

  @Test
  void aUnitNotOnTheRulerOrNotStillIsToldSo() {
    // Given: an arm hanging with the unit on it (x to the ground), and a unit in a moving hand.
    UnitStream hanging = still(BodyPoint.LEAD_HAND, new Vector3(-G, 0, 0), 0);
    UnitStream moving = still(BodyPoint.LEAD_HAND, new Vector3(0, 0, G), 0.5);
    assertThat(TiltStep.of(hanging, WORN, 1, 3).result().why().code())
        .isEqualTo(StepReason.TILT_STEEP);
    assertThat(TiltStep.of(moving, WORN, 1, 3).result().why().code())
        .isEqualTo(StepReason.STANCE_TURNED);
    assertThat(TiltStep.of(ruler(10), moving, 1, 3).result().used()).isFalse();
  }

  @Test
  void aLeaningMountIsFoundBetterThanByStandingAlone() {
    // Given: a pelvis tilted 20 deg and a belt that leans the unit back to plumb, so that it feels
    // up
    // along its own x. Expect: its lean, 20 deg about left, by Kalman updates worked by hand.
    // Stance
    // alone: 10 deg are laid to the lean at a gain of 12^2 / (12^2 + 5^2 + 1.6^2) = 0.839: 8.4.
    // With the ruler: the tilt is (10 / 5^2 + 20 / 3.22^2) / (1 / 5^2 + 1 / 3.22^2) = 17.07 +-
    // 2.71,
    // gain 144 / (144 + 7.3 + 2.6) = 0.936: 16.0. Within 0.25: the update is not quite linear.
    PelvisGeometry nominal = PelvisGeometry.nominal(LeverArm.of(PLAYER));
    double bias = Math.toRadians(1.6);
    PelvisGeometry stance = nominal.afterQuietStance(new Vector3(G, 0, 0), bias);
    PelvisGeometry tilt = nominal.afterTilt(TiltStep.of(ruler(20), WORN, 1, 3), PLAYER);
    assertThat(leanDeg(nominal, stance)).isCloseTo(8.4, within(0.25));
    assertThat(leanDeg(nominal, tilt)).isCloseTo(16.0, within(0.25));
    assertThat(tilt.covariance()[1][1]).isLessThan(0.5 * stance.covariance()[1][1]);
  }

  private static double leanDeg(PelvisGeometry nominal, PelvisGeometry found) {
    return Math.abs(
        Math.toDegrees(
            nominal.qUnitPelvis().conjugate().times(found.qUnitPelvis()).rotationVector().y()));
  }

  @Test
  void aDepthTakenOverTheWornUnitTellsWhereTheUnitIs() {
    // Given: 180 mm from the front points to the outer face. Expect: 180 - 6 - (0.24 * 150 + 9.9) =
    // 128.1 mm ahead (Harrington et al. 2007 for the hip), 7 mm of spread; without a depth on the
    // skin, 180 - 6 - 15 = 159 mm stands in for it. Within 1e-9 mm: arithmetic.
    Player over =
        new Player(
            "p",
            Handedness.LEFT,
            PLAYER.pelvisWidthMm(),
            PLAYER.pelvisDepthMm(),
            PLAYER.statureMm(),
            OptionalDouble.of(180));
    LeverArm arm = LeverArm.of(over);
    assertThat(1000 * arm.midHipFromUnitPelvisM().x()).isCloseTo(128.1, within(1e-9));
    assertThat(1000 * arm.midHipFromUnitPelvisM().z()).isCloseTo(-82.9, within(1e-9));
    assertThat(1000 * arm.sdM().x()).isCloseTo(7, within(1e-9));
    Player onlyOver =
        new Player(
            "p",
            Handedness.LEFT,
            PLAYER.pelvisWidthMm(),
            OptionalDouble.empty(),
            PLAYER.statureMm(),
            OptionalDouble.of(180));
    assertThat(1000 * LeverArm.of(onlyOver).midHipFromUnitPelvisM().x())
        .isCloseTo(174 - 0.24 * 159 - 9.9, within(1e-9));
  }
}
