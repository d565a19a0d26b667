package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit that rests for 1 s and then turns about all axes at once, each rate a sine of its own, up
 * to 8 rad/s; its force is gravity alone, by its true attitude.
 */
class LevelTrackGapTest {

  private static final double RATE_HZ = 500;
  private static final int N = 1000;

  private static Vector3 rate(double t) {
    double u = Math.max(0, t - 1);
    return new Vector3(
        8 * Math.sin(9 * u), 6 * Math.sin(7 * u + 0.5) * Math.min(1, 9 * u), -7 * Math.sin(11 * u));
  }

  private static UnitStream tumble(double gapFromS, double gapS) {
    double[] time = new double[N];
    double[][] accel = new double[3][N];
    double[][] gyro = new double[3][N];
    Quaternion q = Quaternion.aboutX(0.3);
    for (int i = 0; i < N; i++) {
      time[i] = i / RATE_HZ;
      for (int part = 0; part < 10 && i > 0; part++) {
        double at = time[i - 1] + (part + 0.5) / (10 * RATE_HZ);
        q = q.times(Quaternion.fromRotationVector(rate(at).times(1 / (10 * RATE_HZ))));
      }
      Vector3 up = q.conjugate().rotate(Vector3.Z.times(9.81));
      boolean lost = time[i] > gapFromS && time[i] < gapFromS + gapS;
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = lost && axis == 1 ? Double.NaN : rate(time[i]).get(axis);
        accel[axis][i] = up.get(axis);
      }
    }
    double none = Double.POSITIVE_INFINITY;
    return new UnitStream(
        new UnitFacts(BodyPoint.LEAD_HAND, "", RATE_HZ, none, none, true), time, accel, gyro);
  }

  private static LevelTrack track(UnitStream stream) {
    return LevelTrack.of(
        PeakRepair.repair(stream), Vector3.ZERO, LevelTrack.Spreads.CALIBRATED, 0.2, 0.9);
  }

  /** Spread of the turn about a level axis by the parameters of the bridges alone, rad. */
  private static double bridgeSdRad(LevelTrack track, int k, Vector3 along) {
    double[] row = new double[track.parameters()];
    track.putTurn(k, along, row, 0);
    double sum = 0;
    for (int i = 14; i < row.length; i++) {
      sum += row[i] * row[i];
    }
    return Math.sqrt(sum);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.15, 1.3, 1.5, 1.7})
  void behindAGapTheAttitudeIsOffByWhatIsStated(double gapFromS) {
    // Given: 60 ms of one rate axis lost while all axes turn at up to 8 rad/s, at four places.
    // Expect: the turn against the whole track lies within 3 stated spreads about each level axis,
    // and the spread is no more than 40 times it (a line may fit one gap well, not four).
    LevelTrack whole = track(tumble(0, 0));
    LevelTrack torn = track(tumble(gapFromS, 0.06));
    int k = 980;
    Vector3 off = torn.qLevelUnit(k).times(whole.qLevelUnit(k).conjugate()).rotationVector();
    double sd = bridgeSdRad(torn, k, Vector3.X);
    assertThat(sd).isGreaterThan(0.001);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(Math.abs(off.get(axis))).isLessThan(3 * sd);
    }
    assertThat(off.norm()).isGreaterThan(sd / 40);
  }

  @Test
  void allSamplesBehindAGapShareItsTurnAndThoseBeforeHaveNone() {
    // Given: a gap of 60 ms from 1.3 s. Expect: no spread before it, half of it in its middle, the
    // same three numbers everywhere behind it. Within rounding, and a sample's part in the middle.
    LevelTrack torn = track(tumble(1.3, 0.06));
    Bridge bridge = GyroTrack.of(tumble(1.3, 0.06), Vector3.ZERO).bridges().get(0);
    for (Vector3 along : new Vector3[] {Vector3.X, Vector3.Y, Vector3.Z}) {
      double sd = bridge.rotationSdRad();
      assertThat(bridgeSdRad(torn, 640, along)).isZero();
      assertThat(bridgeSdRad(torn, 665, along)).isCloseTo(sd / 2, within(0.05 * sd));
      assertThat(bridgeSdRad(torn, 690, along)).isCloseTo(sd, within(1e-9));
      double[] early = new double[torn.parameters()];
      double[] late = new double[torn.parameters()];
      torn.putTurn(690, along, early, 0);
      torn.putTurn(990, along, late, 0);
      assertThat(Arrays.copyOfRange(late, 14, late.length))
          .containsExactly(Arrays.copyOfRange(early, 14, early.length), within(1e-12));
    }
    assertThat(torn.isSeen(1.33)).isFalse();
    assertThat(torn.isSeen(1.25)).isTrue();
    assertThat(torn.isSeen(3)).as("behind the last sample").isFalse();
  }

  @Test
  void aGapBeforeTheLevelMomentTurnsWhatLiesBeforeIt() {
    // Given: a level moment from 1.6 to 1.9 s and a gap at 1.3 s. Expect: the samples behind the
    // gap are sure, those before carry its turn: the level moment is where all is counted from.
    UnitStream torn = tumble(1.3, 0.06);
    LevelTrack track =
        LevelTrack.of(
            PeakRepair.repair(torn), Vector3.ZERO, LevelTrack.Spreads.CALIBRATED, 1.6, 1.9);
    assertThat(bridgeSdRad(track, 950, Vector3.Y)).isCloseTo(0, within(1e-12));
    assertThat(bridgeSdRad(track, 300, Vector3.Y)).isGreaterThan(0.001);
  }
}
