package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.truth.LessonTruth;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.UnitStream;

/**
 * The streams and the truth come from the same joints by different ways: the streams by rates and
 * accelerations, the truth by values. Integrating the streams must lead back to the truth.
 */
class StreamsAgainstTruthTest {

  private static final long SEED = 11;

  private static LessonSpec perfect() {
    return LessonSpec.standard()
        .withUnitGrade(UnitGrade.PERFECT)
        .withBody(BodyErrors.standard().withoutSkinShift())
        .withHits(0)
        .withPractices(2)
        .withWalking(false)
        .withWearSteps(false)
        .withRateHz(1000)
        .withLossPct(0)
        .withJitterS(0)
        .withUnitStartErrorS(0)
        .withUnitStartSpreadS(0)
        .withClockSkewPpm(0);
  }

  /** Strapdown integration by the middle of each step; returns attitudes sample by sample. */
  private static Quaternion[] attitudes(UnitStream s, int from, int to, Quaternion start) {
    Quaternion[] q = new Quaternion[to - from + 1];
    q[0] = start;
    for (int k = from + 1; k <= to; k++) {
      double dt = s.timeS(k) - s.timeS(k - 1);
      Vector3 before = rate(s, k - 1);
      Vector3 after = rate(s, k);
      // trapezoid plus the coning term dt^2/12 w0 x w1
      Vector3 turn = before.plus(after).times(dt / 2).plus(before.cross(after).times(dt * dt / 12));
      q[k - from] = q[k - from - 1].times(Quaternion.fromRotationVector(turn)).normalized();
    }
    return q;
  }

  private static Vector3 rate(UnitStream s, int k) {
    return new Vector3(s.gyroRadPerS(0, k), s.gyroRadPerS(1, k), s.gyroRadPerS(2, k));
  }

  private static Vector3 force(UnitStream s, int k) {
    return new Vector3(s.accelMps2(0, k), s.accelMps2(1, k), s.accelMps2(2, k));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void aPerfectPelvisUnitIntegratedOverASwingLeadsToTheTruePose(Handedness handed) {
    // Given: 1 kHz, no unit error, sway and wobble on, right- and left-handed; attitude, place and
    // velocity known 0.3 s before takeaway. Expect: pose of the pelvis at the finish.
    // Within 0.001 deg and 0.05 mm: trapezoids of 1 ms err by h^2/12 T f'' = 1e-6/12 * 1 s *
    // 500 m/s^4 = 0.04 mm; a sign, lever arm or mirror that is wrong errs by centimetres.
    SyntheticLesson lesson = LessonSimulator.simulate(perfect().withHanded(handed), SEED);
    LessonTruth truth = lesson.truth();
    UnitStream s = lesson.recording().unit(BodyPoint.PELVIS).orElseThrow();
    SwingTruth swing = truth.swings().get(1);
    int from = s.indexAt(swing.eventS(SwingEvent.TAKEAWAY).orElseThrow() - 0.3);
    int to = s.indexAt(swing.eventS(SwingEvent.FINISH).orElseThrow());
    Quaternion start = truth.path().qGroundPelvis(s.timeS(from)).times(truth.qPelvisUnit());
    Quaternion[] q = attitudes(s, from, to, start);
    Vector3 lever = truth.leverArmUnitM();
    Vector3 velocity =
        truth.path().velocityMps(s.timeS(from)).minus(start.rotate(rate(s, from).cross(lever)));
    Vector3 place = truth.path().midHipM(s.timeS(from)).minus(start.rotate(lever));
    Vector3 gravity = new Vector3(0, 0, -UnitErrors.G_MPS2);
    for (int k = from + 1; k <= to; k++) {
      double dt = s.timeS(k) - s.timeS(k - 1);
      Vector3 a0 = q[k - from - 1].rotate(force(s, k - 1)).plus(gravity);
      Vector3 a1 = q[k - from].rotate(force(s, k)).plus(gravity);
      place = place.plus(velocity.times(dt)).plus(a0.times(2).plus(a1).times(dt * dt / 6));
      velocity = velocity.plus(a0.plus(a1).times(dt / 2));
    }
    Quaternion qEnd = q[to - from].times(truth.qPelvisUnit().conjugate());
    double turnErrorDeg =
        Math.toDegrees(
            truth
                .path()
                .qGroundPelvis(s.timeS(to))
                .conjugate()
                .times(qEnd)
                .rotationVector()
                .norm());
    Vector3 midHip = place.plus(q[to - from].rotate(lever));
    assertThat(turnErrorDeg).isLessThan(0.001);
    assertThat(midHip.minus(truth.path().midHipM(s.timeS(to))).norm()).isLessThan(5e-5);
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theWristBetweenTwoPerfectUnitsIsTheTrueCockAndFlexion(Handedness handed) {
    // Given: forearm and hand rates; the wrist known at address. Expect: cock and flexion at impact
    // from the relative attitude, radial deviation about the unit's z: negative turn for a left
    // lead hand, positive for a right one. Within 0.005 deg: 0.002 deg was
    // seen at 1 kHz; a sign error is tens of degrees.
    SyntheticLesson lesson = LessonSimulator.simulate(perfect().withHanded(handed), SEED);
    LessonTruth truth = lesson.truth();
    UnitStream forearm = lesson.recording().unit(BodyPoint.LEAD_FOREARM).orElseThrow();
    UnitStream hand = lesson.recording().unit(BodyPoint.LEAD_HAND).orElseThrow();
    Quaternion qForearm = truth.unit(BodyPoint.LEAD_FOREARM).orElseThrow().qSegmentUnit();
    Quaternion qHand = truth.unit(BodyPoint.LEAD_HAND).orElseThrow().qSegmentUnit();
    SwingTruth swing = truth.swings().get(0);
    double fromS = swing.eventS(SwingEvent.TAKEAWAY).orElseThrow() - 0.3;
    double toS = swing.eventS(SwingEvent.IMPACT).orElseThrow();
    Quaternion[] f =
        attitudes(forearm, forearm.indexAt(fromS), forearm.indexAt(toS), Quaternion.IDENTITY);
    Quaternion[] h = attitudes(hand, hand.indexAt(fromS), hand.indexAt(toS), Quaternion.IDENTITY);
    int sign = handed.sign();
    double hand0S = hand.timeS(hand.indexAt(fromS));
    // both start at the identity of their own frames; the wrist at address ties them together
    Quaternion qForearmHandStart = wrist(swing.flexionRad(hand0S), swing.cockRad(hand0S), sign);
    Quaternion qStart = qForearm.conjugate().times(qForearmHandStart).times(qHand);
    Quaternion relative =
        qForearm
            .times(f[f.length - 1].conjugate())
            .times(qStart)
            .times(h[h.length - 1])
            .times(qHand.conjugate());
    double endS = hand.timeS(hand.indexAt(toS));
    Quaternion expected = wrist(swing.flexionRad(endS), swing.cockRad(endS), sign);
    double errorDeg = Math.toDegrees(expected.conjugate().times(relative).rotationVector().norm());
    assertThat(errorDeg).isLessThan(0.005);
  }

  private static Quaternion wrist(double flexionRad, double cockRad, int sign) {
    return Quaternion.aboutY(flexionRad).times(Quaternion.aboutZ(-sign * cockRad));
  }

  @Test
  void atRestOnTheTableAUnitFeelsGravityAlone() {
    // Given: a perfect unit in the first two seconds. Expect: 9.80665 m/s^2 whatever way it lies,
    // and no rate. Within 1e-9: roundings of a few products.
    SyntheticLesson lesson = LessonSimulator.simulate(perfect().withWearSteps(true), SEED);
    for (UnitStream s : lesson.recording().units()) {
      for (int k = 0; k < 2000; k++) {
        assertThat(Math.abs(s.accelNormMps2(k) - UnitErrors.G_MPS2)).isLessThan(1e-9);
        assertThat(s.gyroNormRadPerS(k)).isLessThan(1e-9);
      }
    }
  }

  @Test
  void aLeftHandedLessonIsTheMirrorImageOfTheRightHandedOne() {
    // Given: the same seed, all errors on. Expect: along y the acceleration, about x and z the rate
    // change sign, nothing else; all truth free of handedness agrees. Within 0: the mirror is
    // exact.
    LessonSpec spec = LessonSpec.standard().withHits(1).withPractices(1).withWalking(false);
    SyntheticLesson right = LessonSimulator.simulate(spec, SEED);
    SyntheticLesson left = LessonSimulator.simulate(spec.withHanded(Handedness.LEFT), SEED);
    for (BodyPoint point : spec.units()) {
      UnitStream r = right.recording().unit(point).orElseThrow();
      UnitStream l = left.recording().unit(point).orElseThrow();
      assertThat(l.timeColumnS()).isEqualTo(r.timeColumnS());
      for (int k = 0; k < r.size(); k += 7) {
        for (int axis = 0; axis < 3; axis++) {
          double a = axis == 1 ? -1 : 1;
          assertThat(l.accelMps2(axis, k) - a * r.accelMps2(axis, k)).isZero();
          assertThat(l.gyroRadPerS(axis, k) + a * r.gyroRadPerS(axis, k)).isZero();
        }
      }
    }
    SwingTruth r = right.truth().swings().get(0);
    SwingTruth l = left.truth().swings().get(0);
    assertThat(l.eventsS()).isEqualTo(r.eventsS());
    double impactS = r.eventS(SwingEvent.IMPACT).orElseThrow();
    assertThat(l.at(impactS)).isEqualTo(r.at(impactS));
    assertThat(left.truth().path().midHipM(impactS).y())
        .isEqualTo(-right.truth().path().midHipM(impactS).y());
  }
}
