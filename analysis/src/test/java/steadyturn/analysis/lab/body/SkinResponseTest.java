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
    return moved(Joint.PLACE_Z, up);
  }

  private static MountedUnit moved(Joint joint, TimeFunction course) {
    Map<Joint, TimeFunction> joints = new EnumMap<>(Joint.class);
    joints.put(joint, course);
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
    // shaking over own frequency (any textbook of vibrations). Within 2 %: steps of 2 ms, and a
    // spring that stiffens by less than 1 % here.
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

  @Test
  void speedIsWhatAccelerationAddsUpTo() {
    // Given: skin of 13 Hz that a turn of the pelvis of 2 rad within half a second pulls along by
    // 15 mm/rad, sampled 500 and 1000 times a second, at the nodes of the course and between them.
    // Expect: the sum of the accelerations is the change of speed. Within 2 mm/s on the way (the
    // trapezoid's error; the fastest skin goes 130 mm/s): as a unit would feel it, not 200 mm/s.
    double[][] pull = new double[2][6];
    pull[0][2] = 0.015;
    SkinSpring spring = new SkinSpring(13, 0.35, 0.02, 0.1, 0, pull);
    TimeFunction turn =
        (t, vra) -> {
          double u = Math.max(0, Math.min(1, (t - 1) / 0.5));
          double inside = u > 0 && u < 1 ? 1 : 0;
          double omega = 2 * Math.PI / 0.5;
          vra[0] += 2 * (u - Math.sin(2 * Math.PI * u) / (2 * Math.PI));
          vra[1] += 2 / 0.5 * (1 - Math.cos(2 * Math.PI * u)) * inside;
          vra[2] += 2 / 0.5 * omega * Math.sin(2 * Math.PI * u) * inside;
        };
    TimeFunction shift = SkinResponse.of(spring, moved(Joint.TURN, turn), 3)[2];
    for (double stepS : new double[] {0.002, 0.001}) {
      for (double fromS : new double[] {0.9, 0.9007}) {
        double sum = 0;
        for (double t = fromS; t < 2; t += stepS) {
          sum += stepS / 2 * (accel(shift, t) + accel(shift, t + stepS));
          assertThat(sum)
              .as("from %s s by %s s up to %s s", fromS, stepS, t)
              .isCloseTo(shift.rateAt(t + stepS) - shift.rateAt(fromS), within(0.002));
        }
      }
    }
    assertThat(shift.at(2.5)).isCloseTo(0.030, within(0.001));
  }

  private static double accel(TimeFunction f, double timeS) {
    double[] vra = new double[3];
    f.addTo(timeS, vra);
    return vra[2];
  }
}
