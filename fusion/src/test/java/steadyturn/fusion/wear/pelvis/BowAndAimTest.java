package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Bow and aim from movements in closed form. */
class BowAndAimTest {

  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 100);
  private static final Vector3 BIAS = new Vector3(0.02, -0.03, 0.01);

  /** Square to the axis of the bows, as the hip line of a person who stands is level. */
  private static final Vector3 UP = new Vector3(3, 8, 3);

  /** To and fro about a skew axis, with a part across it a quarter of a period later. */
  private static UnitStream bowing(double alongDegPerS, double acrossDegPerS) {
    Vector3 along = new Vector3(2, -3, 6).times(1 / 7.0);
    Vector3 across = new Vector3(6, -2, -3).times(1 / 7.0);
    return MadeUnit.of(
        FACTS,
        4,
        t ->
            BIAS.plus(along.times(Math.toRadians(alongDegPerS) * Math.sin(2 * Math.PI * t)))
                .plus(across.times(Math.toRadians(acrossDegPerS) * Math.cos(2 * Math.PI * t))),
        t -> UP);
  }

  @ParameterizedTest
  @CsvSource({"40,0,true,100", "40,10,true,94.1176", "30,9,true,91.7431", "30,11,false,88.1489"})
  void aBowsAxisIsThePrincipalOneAndItsPurityTheShareOfSquares(
      double along, double across, boolean used, double purityPct) {
    // Expect: along^2 / (along^2 + across^2), as sine and cosine share no product over whole
    // periods; the axis in either sense. Within 1e-4 of a percent (digits printed).
    BowStep bow = BowStep.of(bowing(along, across), BIAS, 1, 3);
    assertThat(bow.result().used()).isEqualTo(used);
    assertThat(bow.purityPct()).isCloseTo(purityPct, within(1e-4));
    assertThat(bow.result().quality()).isEqualTo(bow.purityPct());
    assertThat(Math.abs(bow.axisUnit().dot(new Vector3(2, -3, 6).times(1 / 7.0))))
        .isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"29,true", "31,false"})
  void aTurnAboutALineThatIsNotLevelIsNoBow(double steepDeg, boolean used) {
    // Given: 40 deg/s about a line so many deg off level. Expect: refused beyond 30 (our choice).
    double rad = Math.toRadians(steepDeg);
    UnitStream unit =
        MadeUnit.of(
            FACTS,
            4,
            t -> new Vector3(0, Math.toRadians(40) * Math.sin(2 * Math.PI * t), 0),
            t -> new Vector3(9.8 * Math.cos(rad), 9.8 * Math.sin(rad), 0));
    BowStep bow = BowStep.of(unit, Vector3.ZERO, 1, 3);
    assertThat(bow.result().used()).isEqualTo(used);
    assertThat(bow.purityPct()).isCloseTo(100, within(1e-9));
  }

  @Test
  void aBowUnderTenDegreesASecondSaysNothing() {
    // Given: RMS of 9.9 and 10.1 deg/s (size over root 2); a sample lost in the middle.
    double root = Math.sqrt(2);
    BowStep little = BowStep.of(bowing(9.9 * root, 0), BIAS, 1, 3);
    assertThat(little.result().used()).isFalse();
    assertThat(little.result().quality()).isCloseTo(9.9, within(1e-9));
    assertThat(little.result().limit()).isEqualTo(10);
    assertThat(little.axisUnit()).isEqualTo(Vector3.Y);
    assertThat(little.purityPct()).isZero();
    UnitStream torn = bowing(10.1 * root, 0);
    torn.gyroColumnRadPerS(1)[200] = Double.NaN;
    assertThat(BowStep.of(torn, BIAS, 1, 3).result().used()).isTrue();
    BowStep none = BowStep.of(torn, BIAS, 8, 9);
    assertThat(none.result().used()).isFalse();
    assertThat(none.result().quality()).isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-170, -25, 0, 40, 178})
  void theHipsTurnBetweenAimAndAddressIsTheirAzimuthsDifference(double turnDeg) {
    // Given: hips at 15 deg while aiming, by turnDeg further at address, leaning and bowed as one
    // stands; a unit that sits in any way. Expect: turnDeg in (-180, 180]. Within 1e-9 deg.
    Quaternion qUnitPelvis = Quaternion.fromRotationVector(new Vector3(0.4, -1.2, 0.9));
    Quaternion aiming = Quaternion.aboutZ(Math.toRadians(15)).times(Quaternion.aboutY(0.1));
    Quaternion address =
        Quaternion.aboutZ(Math.toRadians(15 + turnDeg))
            .times(Quaternion.aboutX(0.06))
            .times(Quaternion.aboutY(0.5));
    AimSight sight =
        new AimSight(
            aiming.times(qUnitPelvis.conjugate()),
            address.times(qUnitPelvis.conjugate()),
            10,
            0.001,
            0.5);
    assertThat(Math.toDegrees(sight.hipsTurnedRad(qUnitPelvis))).isCloseTo(turnDeg, within(1e-9));
  }
}
