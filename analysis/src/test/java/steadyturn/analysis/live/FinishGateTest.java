package steadyturn.analysis.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.live.FinishGate.Sight;
import steadyturn.ingest.sample.BodyPoint;

/**
 * When it is worth looking for a swing. Given in all: rates of a made course at 100 Hz, fast for
 * 0.3 s from 1 s on, then so many deg/s of sway; the limits are our own choices.
 */
class FinishGateTest {

  private record Seen(Sight what, double atS) {}

  private final FinishGate gate = new FinishGate();
  private final List<Seen> seen = new ArrayList<>();

  private void turn(BodyPoint point, double degPerS, double fromS, double toS) {
    for (int i = (int) Math.round(100 * fromS); i < Math.round(100 * toS); i++) {
      double rate = Math.toRadians(degPerS);
      Sight sight =
          gate.sample(point, 0.01 * i, new double[] {0.48 * rate, 0.6 * rate, -0.64 * rate});
      if (sight != Sight.NOTHING) {
        seen.add(new Seen(sight, 0.01 * i));
      }
    }
  }

  private void swing(BodyPoint point, double fastDegPerS, double swayDegPerS) {
    turn(point, 2, 0, 1);
    turn(point, fastDegPerS, 1, 1.3);
    turn(point, swayDegPerS, 1.3, 9);
  }

  @Test
  void aFinishIsHeldEightTenthsAfterTheLastMovement() {
    // Given: the pelvis at 300 deg/s, then 5 deg/s. The mean square over 0.1 s falls below 20 deg/s
    // after 0.1 ln(90000 / 375) = 0.548 s; 0.8 s later it is held; 4.5 s after the fast moment
    // over.
    swing(BodyPoint.PELVIS, 300, 5);
    assertThat(seen).extracting(Seen::what).containsExactly(Sight.HELD, Sight.OVER);
    assertThat(seen.get(0).atS).isCloseTo(1.29 + 0.548 + 0.8, within(0.025));
    assertThat(seen.get(1).atS).isCloseTo(1.29 + 4.5, within(0.02));
  }

  @Test
  void whatIsSlowIsNotLookedAt() {
    swing(BodyPoint.PELVIS, 118, 5);
    assertThat(seen).isEmpty();
    FinishGateTest arm = new FinishGateTest();
    arm.swing(BodyPoint.LEAD_FOREARM, 295, 5);
    assertThat(arm.seen).isEmpty();
    assertThat(arm.gate.isIdle()).isTrue();
  }

  @Test
  void theSlowestThatIsLookedAt() {
    swing(BodyPoint.PELVIS, 122, 5);
    assertThat(seen).hasSize(2);
    FinishGateTest arm = new FinishGateTest();
    arm.swing(BodyPoint.LEAD_HAND, 305, 5);
    assertThat(arm.seen).hasSize(2);
  }

  @Test
  void aFinishThatSwaysIsNotHeldButIsOver() {
    swing(BodyPoint.PELVIS, 300, 21);
    assertThat(seen).extracting(Seen::what).containsExactly(Sight.OVER);
    FinishGateTest calmer = new FinishGateTest();
    calmer.swing(BodyPoint.PELVIS, 300, 19);
    assertThat(calmer.seen).extracting(Seen::what).containsExactly(Sight.HELD, Sight.OVER);
  }

  @Test
  void thePelvisIsTheWitnessWhereItIsWorn() {
    // Given: a still pelvis beside an arm that sways at 60 deg/s after its swing. Expect: held.
    turn(BodyPoint.PELVIS, 2, 0, 1);
    turn(BodyPoint.LEAD_HAND, 400, 0.99, 1.3);
    for (double t = 1.3; t < 4; t += 0.1) {
      turn(BodyPoint.LEAD_HAND, 60, t, t + 0.1);
      turn(BodyPoint.PELVIS, 3, t, t + 0.1);
    }
    assertThat(seen).extracting(Seen::what).containsExactly(Sight.HELD);
    assertThat(seen.get(0).atS).isCloseTo(1.29 + 0.8, within(0.03));
    assertThat(gate.isIdle()).isFalse();
  }

  @Test
  void aLostRateSaysNothing() {
    turn(BodyPoint.PELVIS, Double.NaN, 0, 1);
    swing(BodyPoint.PELVIS, 300, 5);
    assertThat(seen).hasSize(2);
  }

  @Test
  void aSecondSwingBeforeTheFirstIsOverIsLookedAtAnew() {
    turn(BodyPoint.PELVIS, 300, 1, 1.3);
    turn(BodyPoint.PELVIS, 5, 1.3, 4);
    turn(BodyPoint.PELVIS, 300, 4, 4.3);
    turn(BodyPoint.PELVIS, 5, 4.3, 12);
    assertThat(seen).extracting(Seen::what).containsExactly(Sight.HELD, Sight.HELD, Sight.OVER);
    assertThat(gate.isIdle()).isTrue();
  }
}
