package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A pelvis unit at 100 Hz, x up the spine, that aims at 10 s and turns 40 deg left, 15 back. */
class AimCarryTest {

  private static UnitStream pelvis() {
    return MadeUnit.of(
        UnitFacts.plain(BodyPoint.PELVIS, 100),
        140,
        t -> new Vector3(rate(t), 0, 0),
        t -> new Vector3(9.80665, 0, 0));
  }

  private static double rate(double t) {
    if (t >= 20 && t < 22) {
      return Math.toRadians(20);
    }
    return t >= 30 && t < 32 ? Math.toRadians(-7.5) : 0;
  }

  @Test
  void theHeadingOfTheAimIsCarriedToTheAddress() {
    // Expect: hips 25 deg to the left of the aim, after 55 deg of turning. Within 0.2 deg: the
    // filter smooths, and takes a little of a slow turn for bias.
    AimSight sight = AimCarry.of(pelvis(), 10).at(40).orElseThrow();
    assertThat(Math.toDegrees(sight.hipsTurnedRad(PelvisGeometry.nominal(arm()).qUnitPelvis())))
        .isCloseTo(25, within(0.2));
    assertThat(Math.toDegrees(sight.turnedRad())).isCloseTo(55, within(0.5));
    assertThat(sight.sinceS()).isEqualTo(30);
  }

  private static LeverArm arm() {
    return new LeverArm(new Vector3(0.1, 0, -0.1), new Vector3(0.01, 0.01, 0.01));
  }

  @ParameterizedTest
  @CsvSource({"129.9,true", "130.1,false", "10.1,true", "9.9,false", "145,false"})
  void itReachesTwoMinutesForwardAndNoStepBack(double addressS, boolean reached) {
    assertThat(AimCarry.of(pelvis(), 10).at(addressS).isPresent()).isEqualTo(reached);
  }

  @ParameterizedTest
  @CsvSource({"3,40,true", "5,40,false", "5,24,true"})
  void overALongBreakNoHeadingIsCarried(int lost, double addressS, boolean carried) {
    // Given: three or five rates lost from 25 s on, gaps of 40 and 60 ms; the border is 50 ms.
    // Expect: none behind the longer one.
    UnitStream torn = pelvis();
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(torn.gyroColumnRadPerS(axis), 2500, 2500 + lost, Double.NaN);
    }
    assertThat(AimCarry.of(torn, 10).at(addressS).isPresent()).isEqualTo(carried);
  }
}
