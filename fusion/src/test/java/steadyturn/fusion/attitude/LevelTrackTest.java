package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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

/** What is not known of an attitude, held against two passes that differ by it. */
class LevelTrackTest {

  private static final TrialMotion TRIAL = TrialMotion.thereAndBack(1, 1.4, 0);
  private static final LevelTrack.Spreads SPREADS = new LevelTrack.Spreads(0.03, 0.002, 0.004);
  private static final double EPSILON = 1e-5;

  private static LevelTrack track(UnitStream stream, List<PeakRepair.Cut> cuts) {
    return LevelTrack.of(
        new PeakRepair.Repaired(stream, cuts), Vector3.ZERO, SPREADS, 0.1995, 0.2005);
  }

  private static UnitStream exact() {
    return TRIAL.stream(UnitFacts.plain(BodyPoint.LEAD_HAND, 1000), 1);
  }

  /** The stream of a unit whose parameter p (as the rows count them) is off by EPSILON. */
  private static UnitStream off(int p) {
    UnitStream stream = exact();
    for (int i = 0; i < stream.size(); i++) {
      double[] rate = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        rate[axis] = stream.gyroRadPerS(axis, i);
      }
      if (p < 5) {
        stream.gyroColumnRadPerS(p - 2)[i] += EPSILON;
      } else {
        stream.gyroColumnRadPerS((p - 5) / 3)[i] += EPSILON * rate[(p - 5) % 3];
      }
    }
    return stream;
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13})
  void everyColumnIsTheDifferenceOfTwoPassesSinceTheLevelMoment(int p) {
    // Given: a motion about all axes; one of the bias (2..4) or of scale and misalignment (5..13)
    // changed by 1e-5. Expect: the small turn, level axes, since the level moment at 0.2 s, times
    // the spread of that parameter. Within 2 % of the largest row (steps of 1 ms, one end of each).
    LevelTrack before = track(exact(), List.of());
    LevelTrack after = track(off(p), List.of());
    double sd = p < 5 ? 0.002 : 0.004;
    double largest = 0;
    double worst = 0;
    Vector3 atLevel = turned(before, after, 200);
    for (int k = 0; k < before.size(); k += 25) {
      Vector3 found = turned(before, after, k).minus(atLevel).times(sd / EPSILON);
      for (int row = 0; row < 3; row++) {
        double stated = rows(before, k)[row][p];
        largest = Math.max(largest, Math.abs(found.get(row)));
        worst = Math.max(worst, Math.abs(stated - found.get(row)));
      }
    }
    assertThat(worst).isLessThan(0.02 * largest + 1e-9);
    assertThat(largest).isGreaterThan(1e-5);
  }

  private static Vector3 turned(LevelTrack before, LevelTrack after, int k) {
    return after.qLevelUnit(k).times(before.qLevelUnit(k).conjugate()).rotationVector();
  }

  @Test
  void theTiltAtTheLevelMomentIsTheSameForAllSamplesAndHasItsSpread() {
    LevelTrack track = track(exact(), List.of());
    assertThat(track.parameters()).isEqualTo(14);
    for (int k : new int[] {0, 200, 1000}) {
      assertThat(rows(track, k)[0][0]).isEqualTo(0.03);
      assertThat(rows(track, k)[1][1]).isEqualTo(0.03);
      assertThat(rows(track, k)[0][1]).isZero();
      assertThat(rows(track, k)[2][0]).isZero();
    }
    for (int p = 2; p < 14; p++) {
      assertThat(rows(track, 200)[1][p]).isZero();
    }
  }

  @Test
  void attitudeAndRateAreThoseOfTheLevelledGyro() {
    // Given: levelled at 0.2 s. Expect: z up at any instant. Within 1e-3 rad: coning and trapezoid.
    LevelTrack track = track(exact(), List.of());
    assertThat(track.size()).isEqualTo(1001);
    Quaternion first = TRIAL.qGroundUnit(0.2).times(track.qLevelUnit(200).conjugate());
    Quaternion last = TRIAL.qGroundUnit(0.7).times(track.qLevelUnit(700).conjugate());
    assertThat(first.rotate(Vector3.Z).z()).isCloseTo(1, within(1e-12));
    assertThat(first.conjugate().times(last).rotationVector().norm()).isLessThan(1e-3);
    assertThat(track.rateUnitRadPerS(700).minus(TRIAL.rateUnitRadPerS(0.7)).norm())
        .isLessThan(1e-12);
    assertThat(track.timeS(700)).isEqualTo(0.7);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void aCutMakesTheAngleAboutItsAxisUnsureWhileItLasts(int axis) {
    // Given: a cut from 0.5 to 0.6 s about an axis, whose doubt grows evenly to 0.2 rad. Expect:
    // nothing before; after it, 0.2 rad about where the axis pointed, which the sum of its parts
    // gives. Within 1 %: a hundred steps, of each the far end.
    AngleDoubt doubt = new AngleDoubt(new double[] {0.5, 0.6}, new double[] {0, 0.2});
    LevelTrack track = track(exact(), List.of(new PeakRepair.Cut(axis, 0.5, 0.6, false, doubt)));
    assertThat(track.parameters()).isEqualTo(15);
    assertThat(column(track, 500, 14).norm()).isZero();
    Vector3 own = new Vector3[] {Vector3.X, Vector3.Y, Vector3.Z}[axis];
    Vector3 expected = Vector3.ZERO;
    for (int k = 500; k < 600; k++) {
      Quaternion middle = track.qLevelUnit(k);
      Quaternion next = track.qLevelUnit(k + 1);
      expected = expected.plus(middle.rotate(own).plus(next.rotate(own)).times(0.002 / 2));
    }
    assertThat(column(track, 650, 14).minus(expected).norm()).isLessThan(0.002);
    assertThat(column(track, 650, 14)).isEqualTo(column(track, 1000, 14));
  }

  /** Derivative of the turn about each level axis. */
  private static double[][] rows(LevelTrack track, int k) {
    double[][] rows = new double[3][track.parameters()];
    track.putTurn(k, Vector3.X, rows[0], 0);
    track.putTurn(k, Vector3.Y, rows[1], 0);
    track.putTurn(k, Vector3.Z, rows[2], 0);
    return rows;
  }

  private static Vector3 column(LevelTrack track, int k, int p) {
    double[][] rows = rows(track, k);
    return new Vector3(rows[0][p], rows[1][p], rows[2][p]);
  }

  @ParameterizedTest
  @CsvSource({"0.4,0.6005,500", "2,3,1000", "-3,-2,0"})
  void theLevelMomentIsTheMiddleOfItsStretchWithinTheTrack(double fromS, double toS, int at) {
    // Expect: nothing unsure of the turn at the middle but the tilt; at an end where the stretch
    // lies beyond it.
    LevelTrack track =
        LevelTrack.of(
            new PeakRepair.Repaired(exact(), List.of()), Vector3.ZERO, SPREADS, fromS, toS);
    double[][] rows = rows(track, at);
    for (int p = 2; p < 14; p++) {
      assertThat(new double[] {rows[0][p], rows[1][p], rows[2][p]}).containsOnly(0);
    }
    assertThat(rows(track, at == 0 ? 300 : at - 200)[0][2]).isNotZero();
  }

  @Test
  void aCalibratedUnitIsTakenToBeBetter() {
    UnitStream raw = exact();
    UnitStream calibrated = TRIAL.stream(raw.facts().asCalibrated(), 1);
    assertThat(LevelTrack.Spreads.of(raw)).isEqualTo(LevelTrack.Spreads.RAW);
    assertThat(LevelTrack.Spreads.of(calibrated)).isEqualTo(LevelTrack.Spreads.CALIBRATED);
  }
}
