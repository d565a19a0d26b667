package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.TrialMotion;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Attitude from rates, on a motion about all axes at once whose truth is exact. */
class GyroTrackTest {

  private static final TrialMotion TRIAL = TrialMotion.thereAndBack(1, 1.4, 0);

  private static GyroTrack track(double rateHz) {
    return GyroTrack.of(TRIAL.stream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), 1), Vector3.ZERO);
  }

  private static double errorRad(GyroTrack track) {
    double largest = 0;
    for (int k = 0; k < track.size(); k++) {
      Quaternion truth = TRIAL.qGroundUnit(0).conjugate().times(TRIAL.qGroundUnit(track.timeS(k)));
      largest =
          Math.max(largest, truth.conjugate().times(track.qTrackUnit(k)).rotationVector().norm());
    }
    return largest;
  }

  /** The sum of dt^2/12 (before x now), turned into the first frame: what coning is worth. */
  private static double coningRad(GyroTrack track) {
    Vector3 sum = Vector3.ZERO;
    for (int k = 1; k < track.size(); k++) {
      double dt = track.timeS(k) - track.timeS(k - 1);
      Vector3 cross = track.rateUnitRadPerS(k - 1).cross(track.rateUnitRadPerS(k));
      sum = sum.plus(track.qTrackUnit(k).rotate(cross).times(dt * dt / 12));
    }
    return sum.norm();
  }

  @Test
  void columnsAreTurnedAsSingleVectorsAre() {
    // Given: a turn about all axes. Expect: rates and any columns in the track frame as the
    // quaternion of each sample turns them. Within 1e-12: rounding.
    GyroTrack track = track(200);
    double[][] columns = new double[3][track.size()];
    Arrays.fill(columns[1], 0.7);
    track.toTrack(columns);
    double[][] rates = track.ratesTrackRadPerS();
    for (int k = 0; k < track.size(); k += 17) {
      Vector3 rate = track.qTrackUnit(k).rotate(track.rateUnitRadPerS(k));
      Vector3 y = track.qTrackUnit(k).rotate(Vector3.Y).times(0.7);
      for (int axis = 0; axis < 3; axis++) {
        assertThat(rates[axis][k]).isCloseTo(rate.get(axis), within(1e-12));
        assertThat(columns[axis][k]).isCloseTo(y.get(axis), within(1e-12));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {100, 200})
  void whatIsLeftOfATurnThereAndBackIsOnceTheConingTerm(double rateHz) {
    // Given: a turn about all axes whose rate and slope vanish at both ends. Expect: integrated by
    // parts, what the trapezoid leaves out there is dt^2/12 times the sum of w x w', which is once
    // what the coning term is worth: so the end is off by once of it, by twice without the term, by
    // three times with its sign turned. Within 3 %: fourth order.
    GyroTrack track = track(rateHz);
    double left = track.qTrackUnit(track.size() - 1).rotationVector().norm();
    assertThat(left / coningRad(track)).isBetween(0.97, 1.03);
  }

  @Test
  void onTheWayTheErrorIsSmall() {
    // Expect: dt^2/12 times the slope of the rate, some 80 rad/s^2, and the coning of above. Within
    // 3e-4 rad at 200 Hz.
    assertThat(errorRad(track(200))).isLessThan(3e-4);
  }

  @ParameterizedTest
  @CsvSource({"0.5,-0.3,0.8", "0.2,0.9,-2.5", "0.1,-1.5,0.4", "3,0.2,0.1"})
  void aLevelledTrackHasZUpAndItsOwnHeadingZero(double x, double y, double z) {
    // Given: a unit that stands in any way, turns slowly, and is levelled over the first 0.3 s.
    // Expect: its attitude is the truth but for a turn about the vertical, which puts the unit's x
    // axis (y where x is within 30 deg of the vertical) over the level x axis at the first sample.
    // Within 1e-4 rad: the turning is slow.
    TrialMotion trial =
        new TrialMotion(
            Quaternion.fromRotationVector(new Vector3(x, y, z)),
            TrialMotion.thereAndBack(1, 0.3, 0).turnRad(),
            TRIAL.placeM());
    UnitStream stream = trial.stream(UnitFacts.plain(BodyPoint.PELVIS, 200), 1);
    GyroTrack level = GyroTrack.of(stream, Vector3.ZERO).levelled(0, 60);
    Quaternion off = trial.qGroundUnit(0).times(level.qTrackUnit(0).conjugate());
    for (int k = 0; k < level.size(); k += 20) {
      Quaternion same = trial.qGroundUnit(level.timeS(k)).times(level.qTrackUnit(k).conjugate());
      assertThat(same.rotate(Vector3.Z).z()).isCloseTo(1, within(1e-8));
      assertThat(off.conjugate().times(same).rotationVector().norm()).isLessThan(1e-4);
    }
    Vector3 ahead = trial.qGroundUnit(0).rotate(Vector3.X);
    Vector3 named = Math.abs(ahead.z()) < Math.cos(Math.toRadians(30)) ? Vector3.X : Vector3.Y;
    Vector3 shown = level.qTrackUnit(0).rotate(named);
    assertThat(Math.atan2(shown.y(), shown.x())).isCloseTo(0, within(1e-4));
    Vector3 mean = GyroTrack.of(stream, Vector3.ZERO).meanForceTrack(0, 60);
    assertThat(mean.norm()).isCloseTo(TrialMotion.GRAVITY_MPS2, within(1e-4));
  }

  @Test
  void biasAndForceAreTakenAxisByAxis() {
    UnitStream stream = TRIAL.stream(UnitFacts.plain(BodyPoint.PELVIS, 100), 1);
    GyroTrack track = GyroTrack.of(stream, new Vector3(0.1, -0.2, 0.3));
    Vector3 expected = TRIAL.rateUnitRadPerS(0.4).minus(new Vector3(0.1, -0.2, 0.3));
    assertThat(track.rateUnitRadPerS(40).minus(expected).norm()).isLessThan(1e-12);
    assertThat(track.forceUnitMps2(40).minus(TRIAL.forceUnitMps2(0.4)).norm()).isLessThan(1e-12);
    assertThat(track.indexAt(0.395)).isEqualTo(40);
    assertThat(track.indexAt(0.4)).isEqualTo(40);
    assertThat(track.indexAt(2)).isEqualTo(track.size());
  }

  @Test
  void nothingIsTurnedByNoSamples() {
    UnitStream stream = TRIAL.stream(UnitFacts.plain(BodyPoint.PELVIS, 100), 1);
    assertThatThrownBy(() -> GyroTrack.of(stream.between(0, 0.005), Vector3.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(GyroTrack.of(stream.between(0, 0.015), Vector3.ZERO).size()).isEqualTo(2);
    assertThatThrownBy(() -> track(100).meanForceTrack(5, 5))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void lostValuesAtTheEndsTakeTheNearestOnes(int axis) {
    // Given: the first three and the last two values of an axis lost. Expect: the fourth before
    // them, the last but two after them, and the others untouched.
    UnitStream stream = TRIAL.stream(UnitFacts.plain(BodyPoint.PELVIS, 100), 1);
    double[] column = stream.gyroColumnRadPerS(axis);
    double[] whole = column.clone();
    for (int i : new int[] {0, 1, 2, 99, 100}) {
      column[i] = Double.NaN;
    }
    GyroTrack track = GyroTrack.of(stream, Vector3.ZERO);
    assertThat(track.rateUnitRadPerS(0).get(axis)).isEqualTo(whole[3]);
    assertThat(track.rateUnitRadPerS(2).get(axis)).isEqualTo(whole[3]);
    assertThat(track.rateUnitRadPerS(3).get(axis)).isEqualTo(whole[3]);
    assertThat(track.rateUnitRadPerS(98).get(axis)).isEqualTo(whole[98]);
    assertThat(track.rateUnitRadPerS(99).get(axis)).isEqualTo(whole[98]);
    assertThat(track.rateUnitRadPerS(100).get(axis)).isEqualTo(whole[98]);
  }

  @Test
  void whatIsUnseenIsLongerThanAFewStepsOrAnEnd() {
    // Given: 100 Hz, two lost from 0.20 s (30 ms from good to good), three from 0.50 s (40 ms), and
    // the last two. Expect: the second only, as at 100 Hz 30 ms are not longer than 30 ms; and what
    // lies behind the last good sample.
    UnitStream stream = TRIAL.stream(UnitFacts.plain(BodyPoint.PELVIS, 100), 1);
    for (int i : new int[] {20, 21, 50, 51, 52, 99, 100}) {
      stream.gyroColumnRadPerS(1)[i] = Double.NaN;
    }
    Unseen unseen = Unseen.of(stream);
    assertThat(unseen.inner()).hasSize(1);
    assertThat(unseen.holds(0.51)).isTrue();
    assertThat(unseen.holds(0.21)).isFalse();
    assertThat(unseen.holds(0.985)).as("behind the last good one").isTrue();
    assertThat(unseen.holds(0.975)).isFalse();
    assertThat(unseen.holds(-0.01)).as("before the first").isTrue();
    assertThat(unseen.touches(0.40, 0.50)).isTrue();
    assertThat(unseen.touches(0.30, 0.48)).isFalse();
    assertThat(unseen.touches(0.54, 0.60)).isFalse();
  }
}
