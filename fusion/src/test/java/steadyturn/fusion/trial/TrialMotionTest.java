package steadyturn.fusion.trial;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Vector3;

class TrialMotionTest {

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.3, 0.71, 0.95})
  void theTrialsRateAndForceAreTheSlopesOfItsAttitudeAndPlace(double t) {
    // Expect: central differences over 2 x 0.1 ms. Within 1e-5: third derivatives of some 1000.
    TrialMotion trial = TrialMotion.thereAndBack(1, 1.5, 0.2);
    double h = 1e-4;
    Vector3 turn =
        trial.qGroundUnit(t - h).conjugate().times(trial.qGroundUnit(t + h)).rotationVector();
    assertThat(trial.rateUnitRadPerS(t).minus(turn.times(0.5 / h)).norm()).isLessThan(1e-5);
    Vector3 pull = trial.velocityMps(t + h).minus(trial.velocityMps(t - h)).times(0.5 / h);
    Vector3 felt = trial.qGroundUnit(t).rotate(trial.forceUnitMps2(t));
    assertThat(felt.minus(pull).minus(new Vector3(0, 0, TrialMotion.GRAVITY_MPS2)).norm())
        .isLessThan(1e-5);
    Vector3 speed = trial.placeM(t + h).minus(trial.placeM(t - h)).times(0.5 / h);
    assertThat(trial.velocityMps(t).minus(speed).norm()).isLessThan(1e-5);
  }
}
