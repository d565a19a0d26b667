package steadyturn.fusion.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationScore;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What every orientation filter promises. */
public abstract class FilterContract {

  private static final long SEED = 20260102;
  private static final double G = 9.80665;

  protected abstract OrientationFilter newFilter(SampleLimits limits);

  private OrientationFilter newFilter() {
    return newFilter(SampleLimits.unlimited());
  }

  /** Angle between two answers, deg. */
  static double apartDeg(Quaternion a, Quaternion b) {
    return Math.toDegrees(a.conjugate().times(b).rotationVector().norm());
  }

  /** Angle of the true vertical from the shown one, deg. */
  public static double tiltDeg(Quaternion shown, Quaternion truth) {
    return Math.toDegrees(OrientationScore.inclinationRad(shown.times(truth.conjugate())));
  }

  /** A unit that wobbles about all axes on the spot: exact rates per step, exact force. */
  public static UnitStream wobble(double seconds, double rateHz, Quaternion qEarthStart) {
    int n = (int) (seconds * rateHz);
    double[] t = new double[n];
    double[][] a = new double[3][n];
    double[][] g = new double[3][n];
    Quaternion before = wobbleAt(0, qEarthStart);
    for (int i = 0; i < n; i++) {
      t[i] = i / rateHz;
      Quaternion now = wobbleAt(t[i], qEarthStart);
      Vector3 rate = before.conjugate().times(now).rotationVector().times(rateHz);
      Vector3 middle = rate.times(-0.5 / rateHz);
      Vector3 force =
          now.times(Quaternion.fromRotationVector(middle)).conjugate().rotate(new Vector3(0, 0, G));
      for (int axis = 0; axis < 3; axis++) {
        g[axis][i] = rate.get(axis);
        a[axis][i] = force.get(axis);
      }
      before = now;
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), t, a, g);
  }

  public static Quaternion wobbleAt(double t, Quaternion qEarthStart) {
    double grow = Math.min(1, Math.max(0, t - 2));
    Vector3 v =
        new Vector3(0.7 * Math.sin(3 * t), 0.5 * Math.sin(2.1 * t), 1.5 * Math.sin(1.3 * t))
            .times(grow);
    return qEarthStart.times(Quaternion.fromRotationVector(v));
  }

  @Test
  void aStillUnitIsLevelledFromTheFirstSampleOn() {
    // Given: a unit lying still at 40 deg of roll and -25 deg of pitch, 100 Hz, no noise.
    // Expect: the shown vertical is the true one at the first and at the last sample.
    // Within 1e-6 deg: rounding and the square root of a cosine near 1.
    Quaternion truth = Quaternion.aboutY(-0.44).times(Quaternion.aboutX(0.7));
    Vector3 force = truth.conjugate().rotate(new Vector3(0, 0, G));
    OrientationFilter filter = newFilter();
    for (int i = 0; i < 500; i++) {
      filter.update(0, 0, 0, force.x(), force.y(), force.z(), 0.01);
      assertThat(tiltDeg(filter.qEarthUnit(), truth)).isCloseTo(0, within(1e-5));
    }
  }

  @Test
  void aSteadyTurnOfASecondAtAHalfTurnPerSecondIsAHalfTurn() {
    // Given: a level unit, 1 s of rest so that the level is found, then 100 steps of 10 ms at
    // pi rad/s about z. Expect: half a turn of heading. Within 0.01 deg: the bias was learnt at
    // rest from exact zeros.
    OrientationFilter filter = newFilter();
    for (int i = 0; i < 100; i++) {
      filter.update(0, 0, 0, 0, 0, G, 0.01);
    }
    Quaternion before = filter.qEarthUnit();
    for (int i = 0; i < 100; i++) {
      filter.update(0, 0, Math.PI, 0, 0, G, 0.01);
    }
    double turnedDeg = apartDeg(before, filter.qEarthUnit());
    assertThat(turnedDeg).isCloseTo(180, within(0.01));
  }

  @Test
  void aHalfTurnAboutALevelAxisEndsUpsideDown() {
    // Given: a level unit that rolls about x by pi in 1 s at 200 Hz, exact samples. Expect: the
    // vertical is followed through straight down. Within 0.3 deg: in a step
    // of 0.9 deg the textbook filter takes the force half a step late.
    OrientationFilter filter = newFilter();
    for (int i = 0; i < 200; i++) {
      filter.update(0, 0, 0, 0, 0, G, 0.005);
    }
    for (int i = 1; i <= 200; i++) {
      double angle = Math.PI * (i - 0.5) / 200;
      filter.update(Math.PI, 0, 0, 0, G * Math.sin(angle), G * Math.cos(angle), 0.005);
    }
    assertThat(tiltDeg(filter.qEarthUnit(), Quaternion.aboutX(Math.PI))).isLessThan(0.3);
  }

  @Test
  void theLengthStaysOneAndTheSigmaIsANumber() {
    UnitStream stream = wobble(20, 100, Quaternion.IDENTITY);
    OrientationTrack track = OrientationRun.follow(newFilter(), stream);
    for (int i = 0; i < track.size(); i++) {
      // Within 1e-9: normalised in every step.
      assertThat(track.qEarthUnit(i).norm()).isCloseTo(1, within(1e-9));
      assertThat(track.inclinationSigmaRad()[i]).isPositive().isFinite();
      assertThat(track.headingSigmaRad()[i]).isNotNegative().isFinite();
    }
  }

  @Test
  void exactMovementIsFollowed() {
    // Given: 60 s of wobbling on the spot with exact samples. Expect: no tilt. Within 0.05 deg: the
    // level at the start is exact and nothing disturbs it but the step of the integration.
    UnitStream stream = wobble(60, 200, Quaternion.IDENTITY);
    OrientationTrack track = OrientationRun.follow(newFilter(), stream);
    double worst = 0;
    for (int i = 0; i < track.size(); i++) {
      Quaternion truth = wobbleAt(track.timeS()[i], Quaternion.IDENTITY);
      worst = Math.max(worst, tiltDeg(track.qEarthUnit(i), truth));
    }
    assertThat(worst).isLessThan(0.05);
  }

  @Test
  void turningTheUnitTurnsTheAnswer() {
    // Given: the same movement by a unit strapped on in another attitude. Expect: the same vertical
    // in the body. Within 0.1 deg: small terms differ only in their order.
    Quaternion qUnitOther = new Quaternion(0.5, -0.5, 0.5, 0.5);
    UnitStream stream = wobble(20, 100, Quaternion.IDENTITY);
    double[][] a = new double[3][stream.size()];
    double[][] g = new double[3][stream.size()];
    for (int i = 0; i < stream.size(); i++) {
      Vector3 force = qUnitOther.conjugate().rotate(accel(stream, i));
      Vector3 rate = qUnitOther.conjugate().rotate(gyro(stream, i));
      for (int axis = 0; axis < 3; axis++) {
        a[axis][i] = force.get(axis);
        g[axis][i] = rate.get(axis);
      }
    }
    UnitStream other = new UnitStream(stream.facts(), stream.timeColumnS(), a, g);
    OrientationTrack first = OrientationRun.follow(newFilter(), stream);
    OrientationTrack second = OrientationRun.follow(newFilter(), other);
    for (int i = 0; i < first.size(); i += 50) {
      Quaternion back = second.qEarthUnit(i).times(qUnitOther.conjugate());
      assertThat(tiltDeg(first.qEarthUnit(i), back)).isLessThan(0.1);
    }
  }

  private static Vector3 accel(UnitStream s, int i) {
    return new Vector3(s.accelMps2(0, i), s.accelMps2(1, i), s.accelMps2(2, i));
  }

  private static Vector3 gyro(UnitStream s, int i) {
    return new Vector3(s.gyroRadPerS(0, i), s.gyroRadPerS(1, i), s.gyroRadPerS(2, i));
  }

  @Test
  void lostSamplesAreBridged() {
    // Given: wobbling at 200 Hz, of which every 20th rate or force (seed above) is NaN. Expect: the
    // tilt stays under 1.5 deg; the rate changes by at most 0.03 rad/s in a step.
    UnitStream stream = wobble(30, 200, Quaternion.IDENTITY);
    Random random = new Random(SEED);
    OrientationFilter filter = newFilter();
    double worst = 0;
    for (int i = 0; i < stream.size(); i++) {
      double holeG = random.nextInt(20) == 0 ? Double.NaN : 0;
      double holeA = random.nextInt(20) == 0 ? Double.NaN : 0;
      filter.update(
          stream.gyroRadPerS(0, i),
          stream.gyroRadPerS(1, i) + holeG,
          stream.gyroRadPerS(2, i),
          stream.accelMps2(0, i),
          stream.accelMps2(1, i),
          stream.accelMps2(2, i) + holeA,
          0.005);
      Quaternion truth = wobbleAt(stream.timeS(i), Quaternion.IDENTITY);
      worst = Math.max(worst, tiltDeg(filter.qEarthUnit(), truth));
    }
    assertThat(worst).isLessThan(1.5);
  }

  @Test
  void unevenStepsAreTakenAsTheyAre() {
    // Given: wobbling at 400 Hz of which a random third is left out (seed above), each sample with
    // the mean rate over its own step. Expect: tilt under 0.5 deg.
    UnitStream fine = wobble(30, 400, Quaternion.IDENTITY);
    Random random = new Random(SEED);
    OrientationFilter filter = newFilter();
    double worst = 0;
    int last = 0;
    for (int i = 0; i < fine.size(); i++) {
      if (i > 0 && random.nextInt(3) == 0) {
        continue;
      }
      double stepS = fine.timeS(i) - fine.timeS(last);
      Vector3 rate = i == 0 ? Vector3.ZERO : meanRate(fine.timeS(last), fine.timeS(i));
      filter.update(
          rate.x(),
          rate.y(),
          rate.z(),
          fine.accelMps2(0, i),
          fine.accelMps2(1, i),
          fine.accelMps2(2, i),
          stepS);
      last = i;
      worst =
          Math.max(
              worst, tiltDeg(filter.qEarthUnit(), wobbleAt(fine.timeS(i), Quaternion.IDENTITY)));
    }
    assertThat(worst).isLessThan(0.5);
  }

  private static Vector3 meanRate(double fromS, double toS) {
    Quaternion from = wobbleAt(fromS, Quaternion.IDENTITY);
    Quaternion to = wobbleAt(toS, Quaternion.IDENTITY);
    return from.conjugate().times(to).rotationVector().times(1 / (toS - fromS));
  }

  @Test
  void badStepsAndBadFirstSamplesAreLeftOut() {
    // Given: NaN samples first, then steps of 0, -1 and NaN seconds. Expect: nothing thrown, and
    // the answer is that of the good samples alone.
    OrientationFilter filter = newFilter();
    double nan = Double.NaN;
    filter.update(nan, nan, nan, nan, nan, nan, 0.01);
    filter.update(0, 0, 0, nan, 0, 0, 0.01);
    filter.update(0, 0, 0, 0, 0, 0, 0.01);
    for (int i = 0; i < 50; i++) {
      filter.update(0, 0, 0, 0, 0, G, 0.01);
    }
    Quaternion before = filter.qEarthUnit();
    filter.update(9, 9, 9, 0, G, 0, 0);
    filter.update(9, 9, 9, 0, G, 0, -1);
    filter.update(9, 9, 9, 0, G, 0, nan);
    filter.update(9, 9, 9, 0, G, 0, Double.POSITIVE_INFINITY);
    assertThat(filter.qEarthUnit()).isEqualTo(before);
    assertThat(tiltDeg(before, Quaternion.IDENTITY)).isLessThan(1e-5);
  }

  @Test
  void aBlowBeyondFullScaleWidensTheSigmaAndIsForgotten() {
    // Given: a still unit whose gyroscope is clipped at 35 rad/s for 30 ms while it really turns by
    // 2 rad about x: about 1 rad is lost. Expect: the sigma of the inclination grows at the blow;
    // after 20 s of rest the true vertical is shown again. Within 3 deg.
    SampleLimits limits = new SampleLimits(160, 35, 0.1, 50);
    OrientationFilter filter = newFilter(limits);
    for (int i = 0; i < 300; i++) {
      filter.update(0, 0, 0, 0, 0, G, 0.005);
    }
    double sigmaBefore = filter.inclinationSigmaRad();
    for (int i = 0; i < 6; i++) {
      double angle = 2 * (i + 0.5) / 6;
      filter.update(35, 0, 0, 0, G * Math.sin(angle), G * Math.cos(angle), 0.005);
    }
    assertThat(filter.inclinationSigmaRad()).isGreaterThan(2 * sigmaBefore);
    for (int i = 0; i < 4000; i++) {
      filter.update(0, 0, 0, 0, G * Math.sin(2), G * Math.cos(2), 0.005);
    }
    assertThat(tiltDeg(filter.qEarthUnit(), Quaternion.aboutX(2))).isLessThan(3);
  }

  @Test
  void aSampleAllocatesNothing() {
    // Given: 50,000 samples after a warm-up of as many. Expect: under 1 byte a sample; what is left
    // belongs to the measurement itself.
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
    UnitStream stream = wobble(500, 100, Quaternion.IDENTITY);
    OrientationFilter filter = newFilter();
    for (int i = 0; i < stream.size(); i++) {
      OrientationRun.feed(filter, stream, i);
    }
    long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
    for (int i = 0; i < stream.size(); i++) {
      OrientationRun.feed(filter, stream, i);
    }
    long spent = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    assertThat((double) spent / stream.size()).isLessThan(1);
  }
}
