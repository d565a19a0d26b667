package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class AttitudeTest {

  private static final double G = 9.80665;

  private static UnitStream stream(double fullScale, double[][] gyro, double rateHz) {
    int n = gyro[0].length;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / rateHz;
      accel[2][i] = G;
    }
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", rateHz, Double.POSITIVE_INFINITY, fullScale, false);
    return new UnitStream(facts, time, accel, gyro);
  }

  private static UnitStream turning(double rateRadPerS) {
    double[][] gyro = new double[3][101];
    Arrays.fill(gyro[1], rateRadPerS);
    return stream(Double.POSITIVE_INFINITY, gyro, 200);
  }

  @Test
  void aSteadyTurnOfHalfASecondAtPiPerSecondIsAQuarterTurnAboutItsAxis() {
    // Given: 100 steps of 5 ms at pi rad/s about y. Expect: pi/2 about y.
    // Within 1e-12 rad: rounding of 100 steps.
    GyroTrack track = GyroTrack.of(turning(Math.PI), Vector3.ZERO);
    Vector3 turned = track.qTrackUnit(100).rotationVector();
    assertThat(turned.y()).isCloseTo(Math.PI / 2, within(1e-12));
  }

  @Test
  void theBiasIsTakenOffBeforeIntegration() {
    // Given: a unit that shows 0.02 rad/s at rest. Expect: no turn. Within rounding.
    GyroTrack track = GyroTrack.of(turning(0.02), new Vector3(0, 0.02, 0));
    assertThat(track.qTrackUnit(100).rotationVector().norm()).isLessThan(1e-12);
  }

  @Test
  void aUnitCarriedRoundAConeComesBackToItsStart() {
    // Given: body rates of a cone, half angle 0.3 rad, once round in 0.5 s, sampled at 500 Hz:
    // unit = Rz(wt) Ry(a) Rz(-wt). Expect: back at the start after one round.
    // Within 1e-4 rad: the trapezoid misses (w dt)^2/12 = 5e-5 of a rate that turns 1.8 rad.
    double w = 4 * Math.PI;
    double a = 0.3;
    double[][] gyro = new double[3][251];
    for (int i = 0; i <= 250; i++) {
      double t = i / 500.0;
      Quaternion spin = Quaternion.aboutZ(w * t);
      Vector3 rate =
          spin.rotate(
              Quaternion.aboutY(-a).rotate(new Vector3(0, 0, w)).minus(new Vector3(0, 0, w)));
      gyro[0][i] = rate.x();
      gyro[1][i] = rate.y();
      gyro[2][i] = rate.z();
    }
    GyroTrack track = GyroTrack.of(stream(1e9, gyro, 500), Vector3.ZERO);
    assertThat(track.qTrackUnit(250).rotationVector().norm()).isLessThan(1e-4);
  }

  @Test
  void aLevelledTrackHasTheForceOfRestAlongZ() {
    // Given: a unit whose z is up. Expect: its level attitude keeps z up. Within rounding.
    GyroTrack track = GyroTrack.of(turning(0), Vector3.ZERO).levelled(0, 50);
    assertThat(track.qTrackUnit(0).rotate(Vector3.Z).z()).isCloseTo(1, within(1e-12));
  }

  @Test
  void lostRatesAreBridgedByAStraightLineAndTheGapIsTold() {
    // Given: a rate growing in a straight line, 6 samples of it lost (30 ms at 200 Hz).
    // Expect: the same turn as unharmed; gap 35 ms from the last good to the next good sample.
    double[][] gyro = new double[3][101];
    for (int i = 0; i <= 100; i++) {
      gyro[2][i] = 0.01 * i;
    }
    double whole =
        GyroTrack.of(stream(1e9, gyro, 200), Vector3.ZERO).qTrackUnit(100).rotationVector().z();
    Arrays.fill(gyro[2], 40, 46, Double.NaN);
    UnitStream torn = stream(1e9, gyro, 200);
    GyroTrack track = GyroTrack.of(torn, Vector3.ZERO);
    assertThat(track.qTrackUnit(100).rotationVector().z()).isCloseTo(whole, within(1e-12));
    List<Gaps.Gap> gaps = Gaps.of(torn, Gaps.Need.RATE).inner();
    assertThat(gaps).hasSize(1);
    assertThat(gaps.get(0).lengthS()).isCloseTo(0.035, within(1e-9));
  }

  @Test
  void theRestBiasIsFoundBetweenMovements() {
    // Given: bias (1, -2, 0.5) deg/s, noise 0.1 deg/s, seed 5, a 2 s swing every 4 s.
    // Expect: the bias. Within 0.03 deg/s: noise 0.1/sqrt(100) per block.
    Random random = new Random(5);
    double[] bias = {1, -2, 0.5};
    double[][] gyro = new double[3][8000];
    for (int i = 0; i < 8000; i++) {
      double moving = i % 800 < 400 ? 300 * Math.sin(i * 0.05) : 0;
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = Math.toRadians(bias[axis] + moving + 0.1 * random.nextGaussian());
      }
    }
    Vector3 found = RestBias.of(stream(1e9, gyro, 200));
    for (int axis = 0; axis < 3; axis++) {
      assertThat(Math.toDegrees(found.get(axis))).isCloseTo(bias[axis], within(0.03));
    }
  }

  /** A bell of 1200 deg/s, half a sine of 0.3 s, cut at the full scale. */
  private static UnitStream cutBell(double fullScaleDegPerS, double highestDegPerS) {
    double[][] gyro = new double[3][501];
    double full = Math.toRadians(fullScaleDegPerS);
    for (int i = 0; i <= 150; i++) {
      double rate = Math.toRadians(highestDegPerS) * Math.sin(Math.PI * i / 150);
      gyro[1][i + 100] = Math.min(full, rate);
    }
    return stream(full, gyro, 500);
  }

  @Test
  void aPeakCutForThirtyMillisecondsIsRestoredWithinItsStatedSpread() {
    // Given: a half sine of 1200 deg/s over 0.3 s, cut at 1185 deg/s: cut for 30 ms.
    // Expect: the area of the whole half sine, 1200 x 0.3 x 2/pi deg.
    // Within 2 SD of what the repair itself states, and within 0.02 deg.
    PeakRepair.Repaired repaired = PeakRepair.repair(cutBell(1185, 1200));
    double turn =
        GyroTrack.of(repaired.stream(), Vector3.ZERO).qTrackUnit(500).rotationVector().y();
    double expected = Math.toRadians(1200 * 0.3 * 2 / Math.PI);
    double wrapped = Math.IEEEremainder(turn - expected, 2 * Math.PI);
    assertThat(repaired.cuts()).hasSize(1);
    assertThat(repaired.cuts().get(0).beyond()).isFalse();
    assertThat(Math.abs(wrapped)).isLessThan(Math.toRadians(0.02));
    assertThat(Math.abs(wrapped)).isLessThan(2 * repaired.angleSdRad(1) + 1e-4);
  }

  @Test
  void aPeakCutForATenthOfASecondIsBeyondRepair() {
    // Given: the same bell cut at 1000 deg/s, for 112 ms. Expect: filled, and said to be beyond.
    PeakRepair.Repaired repaired = PeakRepair.repair(cutBell(1000, 1200));
    assertThat(repaired.beyondBefore(1)).isTrue();
    assertThat(repaired.beyondBefore(0.1)).isFalse();
  }

  @Test
  void aStreamWithoutCutsIsReturnedAsItIs() {
    UnitStream whole = cutBell(2000, 1200);
    assertThat(PeakRepair.repair(whole).stream()).isSameAs(whole);
  }
}
