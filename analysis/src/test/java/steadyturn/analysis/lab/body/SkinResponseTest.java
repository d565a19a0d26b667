package steadyturn.analysis.lab.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;

/** A unit on skin against the textbook of vibrations. */
class SkinResponseTest {

  private static final double[][] NO_PULL = new double[2][6];

  private static MountedUnit shaken(TimeFunction up) {
    Map<Joint, TimeFunction> joints = new EnumMap<>(Joint.class);
    joints.put(Joint.PLACE_Z, up);
    BodyMotion body = new BodyMotion(BodySizes.of(240, 150, 1760), WristAxes.SQUARE, joints);
    return new MountedUnit(
        BodyPoint.PELVIS,
        body,
        Vector3.ZERO,
        Quaternion.IDENTITY,
        new TimeFunction[0],
        MountedUnit.Carry.NONE);
  }

  @Test
  void aShakenBaseIsAnsweredAsTheTextbookSays() {
    // Given: a pelvis shaken up and down by 0.2 mm at 4, 8 and 12 Hz, a spring of 8 Hz and damping
    // 0.25. Expect: the relative way of a seismic mass, r^2 / sqrt((1 - r^2)^2 + (2 d r)^2) with r
    // =
    // shaking over own frequency (any textbook of vibrations). Within 2 %: steps of 2 ms in which
    // the drive is held, and a spring that stiffens by less than 1 % here.
    SkinSpring spring = new SkinSpring(8, 0.25, 0.02, 0.1, 0, NO_PULL);
    for (double hz : new double[] {4, 8, 12}) {
      double omega = 2 * Math.PI * hz;
      TimeFunction up =
          (t, vra) -> {
            vra[0] += 2e-4 * Math.sin(omega * t);
            vra[1] += 2e-4 * omega * Math.cos(omega * t);
            vra[2] -= 2e-4 * omega * omega * Math.sin(omega * t);
          };
      TimeFunction answer = SkinResponse.of(spring, shaken(up), 6)[2];
      double most = 0;
      for (double t = 4; t < 5.9; t += 0.0005) {
        most = Math.max(most, Math.abs(answer.at(t)));
      }
      double r = hz / 8;
      double expected = 2e-4 * r * r / Math.hypot(1 - r * r, 2 * 0.25 * r);
      assertThat(most).as("at %s Hz", hz).isCloseTo(expected, within(0.02 * expected));
    }
  }

  @Test
  void aUnitThatStandsStillDoesNotMoveOnItsSkin() {
    // Given: no movement. Expect: none.
    SkinSpring spring = new SkinSpring(8, 0.25, 0.02, 0.1, 1e-3, NO_PULL);
    for (TimeFunction shift : SkinResponse.of(spring, shaken(TimeFunction.constant(1)), 2)) {
      assertThat(shift.at(1)).isZero();
      assertThat(shift.rateAt(1)).isZero();
    }
  }
}
