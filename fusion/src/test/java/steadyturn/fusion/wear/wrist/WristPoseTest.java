package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Neutral wrist and cocking from movements in closed form. */
class WristPoseTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 100);
  private static final Vector3 BIAS = new Vector3(0.02, -0.03, 0.01);
  private static final Vector3 UP = new Vector3(3, -4, 8);

  private static UnitStream swaying(double rmsDegPerS) {
    double size = Math.toRadians(rmsDegPerS) * Math.sqrt(2);
    Vector3 about = new Vector3(2, -3, 6).times(1 / 7.0);
    return MadeUnit.of(
        FACTS, 4, t -> BIAS.plus(about.times(size * Math.sin(2 * Math.PI * t))), t -> UP);
  }

  private static UnitStream hanging(BodyPoint point, Vector3 along, boolean calibrated) {
    UnitFacts plain = UnitFacts.plain(point, 100);
    return MadeUnit.of(
        calibrated ? plain.asCalibrated() : plain,
        3,
        t -> new Vector3(0.01, 0, 0),
        t -> along.unit().times(-9.8));
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void theNeutralPosePutsTheLongAxesDownAndTheBackOfTheHandAsDrawn(boolean calibrated) {
    // Given: two units askew by up to 20 deg. Expect: each segment's x where gravity points, its z
    // in the plane of x and the unit's z, axes right-handed; spreads by hand: hanging 1.5 deg,
    // straight 2 deg, the accelerometer 1.6 deg raw and 0.4 deg calibrated (constants.csv).
    Vector3 forearmLong = new Vector3(1, 0.2, -0.15);
    Vector3 handLong = new Vector3(1, -0.1, 0.3);
    NeutralWrist pose =
        NeutralWrist.of(
            WristAlignment.nominal(),
            hanging(BodyPoint.LEAD_FOREARM, forearmLong, calibrated),
            hanging(BodyPoint.LEAD_HAND, handLong, calibrated),
            0.5,
            2.5);
    double tilt = calibrated ? 0.4 : 1.6;
    WristAlignment found = pose.alignment();
    assertThat(pose.result().used()).isTrue();
    assertPosed(found.forearm(), forearmLong.unit(), Math.hypot(1.5, tilt));
    assertPosed(found.hand(), handLong.unit(), Math.hypot(2, Math.hypot(1.5, tilt)));
    assertThat(Math.toDegrees(found.hangSdRad())).isCloseTo(1.5, within(1e-9));
    assertThat(found.source()).isEqualTo(WristAlignment.Source.POSE);
    assertThat(found.posed()).isTrue();
    double off = Math.toDegrees(Math.acos(handLong.unit().x()));
    assertThat(pose.result().quality()).isCloseTo(off, within(1e-9));
  }

  private static void assertPosed(UnitMount mount, Vector3 longAxis, double sdDeg) {
    Vector3 x = mount.qUnitSegment().rotate(Vector3.X);
    Vector3 z = mount.qUnitSegment().rotate(Vector3.Z);
    assertThat(x.minus(longAxis).norm()).isLessThan(1e-9);
    assertThat(z.z()).isPositive();
    assertThat(z.dot(longAxis.cross(Vector3.Z))).isCloseTo(0, within(1e-9));
    assertThat(mount.qUnitSegment().rotate(Vector3.Y).minus(z.cross(x)).norm()).isLessThan(1e-9);
    assertThat(Math.toDegrees(mount.longAxisSdRad())).isCloseTo(sdDeg, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"29,0,true", "31,0,false", "0,29,true", "0,31,false"})
  void aUnitThirtyDegreesOffItsDrawingIsNotBelieved(double forearmDeg, double handDeg, boolean ok) {
    UnitStream forearm = hanging(BodyPoint.LEAD_FOREARM, leaning(forearmDeg), false);
    NeutralWrist pose =
        NeutralWrist.of(
            WristAlignment.nominal(),
            forearm,
            hanging(BodyPoint.LEAD_HAND, leaning(handDeg), false),
            0.5,
            2.5);
    assertThat(pose.result().used()).isEqualTo(ok);
    assertThat(pose.result().quality()).isCloseTo(Math.max(forearmDeg, handDeg), within(1e-9));
    assertThat(pose.alignment().posed()).isEqualTo(ok);
    NeutralWrist alone = NeutralWrist.ofForearm(WristAlignment.nominalShaft(), forearm, 0.5, 2.5);
    assertThat(alone.result().used()).isEqualTo(forearmDeg < 30);
    assertThat(alone.alignment().hangSdRad()).isZero();
    assertThat(alone.alignment().posed()).isFalse();
    if (forearmDeg < 30) {
      assertPosed(alone.alignment().forearm(), leaning(forearmDeg), Math.hypot(1.5, 1.6));
      assertThat(alone.alignment().hand()).isEqualTo(UnitMount.onShaft());
    }
  }

  private static Vector3 leaning(double deg) {
    double a = Math.toRadians(deg);
    return new Vector3(Math.cos(a), -0.6 * Math.sin(a), 0.8 * Math.sin(a));
  }

  @ParameterizedTest
  @CsvSource({"true,false", "false,true"})
  void whoeverMovesInThePoseSpoilsIt(boolean forearmMoves, boolean handMoves) {
    UnitStream still = hanging(BodyPoint.LEAD_HAND, Vector3.X, false);
    UnitStream moving = swaying(5);
    UnitStream forearm = forearmMoves ? moving : still;
    NeutralWrist pose =
        NeutralWrist.of(WristAlignment.nominal(), forearm, handMoves ? moving : still, 1, 2.5);
    assertThat(pose.result().used()).isFalse();
    assertThat(pose.alignment()).isEqualTo(WristAlignment.nominal());
    assertThat(
            NeutralWrist.ofForearm(WristAlignment.nominalShaft(), forearm, 1, 2.5).result().used())
        .isEqualTo(!forearmMoves);
  }

  /** Cocking of a hand about an axis turned by offDeg about its x; the forearm moves, too. */
  private static CockingStep cocking(double offDeg, double cockDegPerS, double bendDegPerS) {
    Quaternion forearmSits = Quaternion.fromRotationVector(new Vector3(0.2, -0.1, 0.15));
    Quaternion handSits = Quaternion.fromRotationVector(new Vector3(-0.1, 0.15, 0.1));
    WristAlignment before =
        new WristAlignment(
            UnitMount.onSkin().posed(forearmSits, 0.05),
            UnitMount.onSkin().posed(handSits, 0.06),
            0.02,
            WristAlignment.Source.POSE);
    Vector3 axis = Quaternion.aboutX(Math.toRadians(offDeg)).rotate(Vector3.Z);
    Vector3 forearmRate = new Vector3(0.3, -0.5, 0.4);
    UnitStream forearm =
        MadeUnit.of(
            UnitFacts.plain(BodyPoint.LEAD_FOREARM, 100),
            4,
            t -> forearmSits.rotate(forearmRate.times(Math.cos(t))).plus(BIAS),
            t -> UP);
    UnitStream hand =
        MadeUnit.of(
            UnitFacts.plain(BodyPoint.LEAD_HAND, 100),
            4,
            t ->
                handSits
                    .rotate(
                        forearmRate
                            .times(Math.cos(t))
                            .plus(
                                axis.times(Math.toRadians(cockDegPerS) * Math.sin(2 * Math.PI * t)))
                            .plus(
                                Vector3.X.times(
                                    Math.toRadians(bendDegPerS) * Math.cos(2 * Math.PI * t))))
                    .minus(BIAS),
            t -> UP);
    return CockingStep.of(before, forearm, BIAS, hand, BIAS.times(-1), 1, 3);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-12, 4, 20})
  void cockingTurnsTheHandHalfWayToTheAxisItShows(double offDeg) {
    // Given: an axis offDeg off the drawn one about the bone; drawing and movement known to 5 deg
    // each. Expect: half of it corrected, 5 / root 2 deg left; the mount else as posed. Within
    // 1e-9.
    CockingStep step = cocking(offDeg, 80, 0);
    assertThat(step.result().used()).isTrue();
    assertThat(step.purityPct()).isCloseTo(100, within(1e-6));
    Quaternion handSits = Quaternion.fromRotationVector(new Vector3(-0.1, 0.15, 0.1));
    Vector3 turned = handSits.conjugate().times(step.alignment().qHandUnitHand()).rotationVector();
    assertThat(turned.minus(new Vector3(Math.toRadians(offDeg / 2), 0, 0)).norm()).isLessThan(1e-6);
    assertThat(Math.toDegrees(step.alignment().hand().axialSdRad()))
        .isCloseTo(5 / Math.sqrt(2), within(1e-9));
    assertThat(step.alignment().hand().longAxisSdRad()).isEqualTo(0.06);
    assertThat(step.alignment().hangSdRad()).isEqualTo(0.02);
    assertThat(step.alignment().source()).isEqualTo(WristAlignment.Source.COCKING);
  }

  @ParameterizedTest
  @CsvSource({"80,30,true,87.6712", "80,35,false,83.9344", "14.3,0,true,100", "14,0,false,100"})
  void cockingIsUsedWhenPureAndBrisk(double cock, double bend, boolean used, double purity) {
    // Expect: purity cock^2 / (cock^2 + bend^2), 85 % at least; 10 deg/s RMS at least, that is
    // 14.14
    // deg/s of a sine.
    CockingStep step = cocking(6, cock, bend);
    assertThat(step.purityPct()).isCloseTo(purity, within(1e-4));
    assertThat(step.result().used()).isEqualTo(used);
    if (!used) {
      assertThat(step.alignment().source()).isEqualTo(WristAlignment.Source.POSE);
    }
  }
}
