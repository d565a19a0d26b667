package steadyturn.analysis.coach.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Given: a forearm that turns about one axis, 35 deg from level, from hanging 55 deg below level;
 * 90 deg of turning bring it level. Gyroscope noise 0.1 deg/s, accelerometer noise 0.05 m/s^2.
 */
class ArmRisesTest {

  private static final double RATE_HZ = 100;
  private static final double REST_S = 3;
  private static final double LEAN_RAD = Math.toRadians(35);

  @Test
  void anArmThatRisesPastLevelAndComesBackIsOneRise() {
    // Given: 120 deg back in 1.2 s, 120 deg down in 0.8 s, from rest at 3 s. Expect: top at 4.2 s,
    // level down after 30 of 120 deg, on a raised cosine at 4.2 + 0.8 * 0.326 s; back at 5.0 s. The
    // ends of a raised cosine are slow: takeaway 0.05 s before to 0.1 s after 3 s, as it is read
    // from the
    // line through two later speeds; the rest within 0.05 s.
    List<ArmRise> found = ArmRises.of(arm(1, step(1.2, -120), step(0.8, 120)), ALIGNED, 1);
    assertThat(found).hasSize(1);
    ArmRise rise = found.get(0);
    assertThat(rise.takeaway().timeS()).isBetween(2.95, 3.1);
    assertThat(rise.topS()).isBetween(4.15, 4.25);
    assertThat(rise.levelDown().orElseThrow().timeS()).isBetween(4.41, 4.51);
    assertThat(rise.back().timeS()).isBetween(4.9, 5.05);
  }

  @Test
  void comingDownToLevelAndGoingUpAgainIsStillOneRise() {
    // Given: to the top, down to level and back up, twice, then all the way: "half way twice".
    // Expect: one rise, turned round for the last time at 3 + 1.2 + 4 * 0.6 = 6.6 s.
    double[][] steps = {
      step(1.2, -130), step(0.6, 40), step(0.6, -40), step(0.6, 40), step(0.6, -40), step(0.8, 130)
    };
    List<ArmRise> found = ArmRises.of(arm(1, steps), ALIGNED, 1);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).topS()).isBetween(6.5, 6.7);
  }

  @Test
  void whatStaysLowOrGoesTheOtherWayIsNone() {
    // Given: 40 deg back, as a putt or a waggle; 120 deg forward and back, as a follow-through.
    assertThat(ArmRises.of(arm(1, step(0.8, -40), step(0.8, 40)), ALIGNED, 1)).isEmpty();
    assertThat(ArmRises.of(arm(1, step(1, 120), step(1, -120)), ALIGNED, 1)).isEmpty();
  }

  @Test
  void anArmThatOnlyReachesLevelHasNoCrossingOfIt() {
    // Given: 85 deg back, 4 deg short of level. Expect: a rise, and no level on the way down.
    List<ArmRise> found = ArmRises.of(arm(1, step(1.2, -85), step(0.8, 85)), ALIGNED, 1);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).levelDown()).isEmpty();
  }

  @Test
  void aLeftHandedRiseIsFoundForALeftHandedPlayerOnly() {
    UnitStream mirrored = arm(-1, step(1.2, -120), step(0.8, 120));
    assertThat(ArmRises.of(mirrored, ALIGNED, -1)).hasSize(1);
    assertThat(ArmRises.of(mirrored, ALIGNED, 1)).isEmpty();
  }

  private static final WristAlignment ALIGNED = WristAlignment.nominal();

  private static double[] step(double lengthS, double turnDeg) {
    return new double[] {lengthS, Math.toRadians(turnDeg)};
  }

  /** Rest, the steps one after the other as raised cosines, rest. */
  private static UnitStream arm(int handSign, double[]... steps) {
    double lengthS = 2 * REST_S;
    for (double[] step : steps) {
      lengthS += step[0];
    }
    int n = (int) (lengthS * RATE_HZ);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    Random random = new Random(11);
    Vector3 axis = new Vector3(0, handSign * Math.cos(LEAN_RAD), handSign * Math.sin(LEAN_RAD));
    Vector3 hanging = new Vector3(0, Math.sin(LEAN_RAD), -Math.cos(LEAN_RAD));
    Quaternion start = Quaternion.fromAxes(hanging, axis, hanging.cross(axis));
    for (int i = 0; i < n; i++) {
      timeS[i] = i / RATE_HZ;
      Quaternion unit =
          Quaternion.fromRotationVector(axis.times(turned(timeS[i], steps))).times(start);
      double rate = (turned(timeS[i] + 1e-4, steps) - turned(timeS[i] - 1e-4, steps)) / 2e-4;
      Vector3 force = unit.conjugate().rotate(new Vector3(0, 0, 9.81));
      Vector3 turning = unit.conjugate().rotate(axis.times(rate));
      for (int a = 0; a < 3; a++) {
        accel[a][i] = force.get(a) + 0.05 * random.nextGaussian();
        gyro[a][i] = turning.get(a) + Math.toRadians(0.1) * random.nextGaussian();
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_FOREARM, RATE_HZ), timeS, accel, gyro);
  }

  private static double turned(double timeS, double[][] steps) {
    double left = timeS - REST_S;
    double sum = 0;
    for (double[] step : steps) {
      double part = Math.max(0, Math.min(1, left / step[0]));
      sum += step[1] * (1 - Math.cos(Math.PI * part)) / 2;
      left -= step[0];
    }
    return sum;
  }
}
