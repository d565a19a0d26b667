package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

class PelvisGeometryTest {

  private static final Player MEASURED =
      new Player(
          "p01",
          Handedness.RIGHT,
          OptionalDouble.of(240),
          OptionalDouble.of(150),
          OptionalDouble.of(1750));

  @Test
  void theHipCentresAreThoseOfTheRegression() {
    // Given: PD 150 mm, PW 240 mm. Expect: 45.9 behind, 82.9 below, 86.5 to the side (Harrington et
    // al. 2007, J Biomech
    // 40:595-602; computed from the published constants). Within 1e-9: arithmetic.
    assertThat(LeverArm.hipBehindFrontMm(150)).isCloseTo(45.9, within(1e-9));
    assertThat(LeverArm.hipBelowFrontMm(240)).isCloseTo(82.9, within(1e-9));
    assertThat(LeverArm.hipHalfDistanceMm(240)).isCloseTo(86.5, within(1e-9));
  }

  @Test
  void midHipLiesAheadOfTheUnitAndBelow() {
    // Given: the same player. Expect: 150 - 45.9 + 15 = 119.1 mm ahead, 82.9 mm below. Within
    // 1e-12.
    Vector3 arm = LeverArm.of(MEASURED).midHipFromUnitPelvisM();
    assertThat(arm.x()).isCloseTo(0.1191, within(1e-12));
    assertThat(arm.y()).isZero();
    assertThat(arm.z()).isCloseTo(-0.0829, within(1e-12));
  }

  @Test
  void aPlayerWithoutSizesHasAWiderLeverArm() {
    // Given: callipers, stature only, nothing. Expect: each spread wider than the one before.
    Player stature =
        new Player(
            "p",
            Handedness.RIGHT,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(1750));
    double measured = LeverArm.of(MEASURED).sdM().x();
    double guessed = LeverArm.of(stature).sdM().x();
    double unknown = LeverArm.of(Player.unmeasured("p", Handedness.RIGHT)).sdM().x();
    assertThat(guessed).isGreaterThan(measured);
    assertThat(unknown).isGreaterThan(guessed);
  }

  @Test
  void theNominalMountingHasXUpAndZBackwards() {
    // Given: the strapping page. Expect: pelvis up is unit x, pelvis forward is unit -z. Within
    // 1e-12.
    Quaternion q = PelvisGeometry.nominal(LeverArm.of(MEASURED)).qUnitPelvis();
    assertThat(q.rotate(Vector3.Z).x()).isCloseTo(1, within(1e-12));
    assertThat(q.rotate(Vector3.X).z()).isCloseTo(-1, within(1e-12));
    assertThat(q.rotate(Vector3.Y).y()).isCloseTo(1, within(1e-12));
  }

  @Test
  void stanceAndBowFindAMountingThatIsOff() {
    // Given: a unit turned by 5 deg about up and 6 deg about left against the nominal, seen by an
    // exact stance (pelvis
    // tilted 10 deg) and an exact bow axis. Expect: the turn about up found, as the bow shows it;
    // about left most of it,
    // as the standing tilt is uncertain. Within 2.5 deg each: prior and step spreads share the
    // difference.
    PelvisGeometry nominal = PelvisGeometry.nominal(LeverArm.of(MEASURED));
    Quaternion truth =
        nominal
            .qUnitPelvis()
            .times(Quaternion.aboutZ(Math.toRadians(5)))
            .times(Quaternion.aboutY(Math.toRadians(6)));
    double tilt = Math.toRadians(10);
    Vector3 upPelvis = new Vector3(-Math.sin(tilt), 0, Math.cos(tilt));
    PelvisGeometry found =
        nominal
            .afterQuietStance(truth.rotate(upPelvis).times(9.81), 0)
            .afterBow(truth.rotate(Vector3.Y).times(-1));
    Vector3 left =
        found.qUnitPelvis().conjugate().times(truth).rotationVector().times(180 / Math.PI);
    Vector3 before =
        nominal.qUnitPelvis().conjugate().times(truth).rotationVector().times(180 / Math.PI);
    assertThat(left.norm()).isLessThan(before.norm() / 2);
    assertThat(Math.abs(left.z())).isLessThan(2.5);
    assertThat(Math.abs(left.y())).isLessThan(2.5);
  }

  @Test
  void everyStepNarrowsTheSpread() {
    // Given: a stance and a bow as nominal. Expect: smaller variance of each turn and of the lever
    // arm ahead.
    PelvisGeometry nominal = PelvisGeometry.nominal(LeverArm.of(MEASURED));
    double tilt = Math.toRadians(10);
    Vector3 up = nominal.qUnitPelvis().rotate(new Vector3(-Math.sin(tilt), 0, Math.cos(tilt)));
    PelvisGeometry stance = nominal.afterQuietStance(up, 0);
    PelvisGeometry bow = stance.afterBow(Vector3.Y);
    assertThat(stance.covariance()[1][1]).isLessThan(nominal.covariance()[1][1]);
    assertThat(bow.covariance()[2][2]).isLessThan(stance.covariance()[2][2]);
    assertThat(stance.covariance()[5][5]).isLessThan(nominal.covariance()[5][5]);
  }

  @Test
  void aStanceSeenByARawAccelerometerSaysLessOfTheSideTilt() {
    // Given: the mounting known to 3.5 deg about forward and up, a stance tilted forward by 10 deg
    // and level from side to side to 1.4 deg, an accelerometer whose bias turns the vertical by
    // 1.6 deg. Expect by hand (one Kalman update): the vertical leans aside by c x + s z, c = cos
    // 10, s = sin 10; of it 12.25 deg^2 are known before and 1.4^2 + 1.6^2 = 4.52 are seen; about
    // forward 12.25 - (12.25 c)^2 / (12.25 + 4.52) = 1.89^2 stay, and without bias 1.417^2. Within
    // 0.01 deg.
    PelvisGeometry nominal = PelvisGeometry.nominal(LeverArm.of(MEASURED));
    double tilt = Math.toRadians(10);
    Vector3 up = nominal.qUnitPelvis().rotate(new Vector3(-Math.sin(tilt), 0, Math.cos(tilt)));
    assertThat(aboutForwardDeg(nominal.afterQuietStance(up, Math.toRadians(1.6))))
        .isCloseTo(1.890, within(0.01));
    assertThat(aboutForwardDeg(nominal.afterQuietStance(up, 0))).isCloseTo(1.417, within(0.01));
  }

  private static double aboutForwardDeg(PelvisGeometry geometry) {
    return Math.toDegrees(Math.sqrt(geometry.covariance()[0][0]));
  }

  @ParameterizedTest
  @CsvSource({"8,2,3.5,false", "-8,2,3.5,false", "50,0,1,true", "-50,0,1,true"})
  void aBowFarFromTheNominalMountingIsBelievedAndThePlaceIsNot(
      double roundDeg, double least, double most, boolean isLost) {
    // Given: a unit that sits so far round the body, about its x, which lies along the spine; a bow
    // about the true hip line. Expect: at 8 deg the nominal mounting (3.5 deg) has its say beside
    // the bow (2.5): 6.25 / 18.5 of 8 deg, 2.7, are left; at 50 it has none, and where mid-hip
    // lies to the side is not known to 6 cm (2 cm before any step).
    double rad = Math.toRadians(roundDeg);
    Vector3 hips = new Vector3(0, Math.cos(rad), Math.sin(rad));
    PelvisGeometry worn = PelvisGeometry.nominal(LeverArm.of(MEASURED)).afterBow(hips);
    double missed = Math.toDegrees(Math.acos(worn.qUnitPelvis().rotate(Vector3.Y).dot(hips)));
    assertThat(missed).isBetween(least, most);
    assertThat(Math.sqrt(worn.covariance()[4][4]) > 0.06).isEqualTo(isLost);
  }
}
