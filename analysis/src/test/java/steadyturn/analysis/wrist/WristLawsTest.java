package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A wrist of exact truth: a forearm that swings and rolls about all axes, a hand that cocks to 60
 * deg, keeps that and lets go. Rates from attitudes 10 us apart, gravity alone; 500 Hz; a
 * left-handed player is the right-handed one in the mirror.
 */
class WristLawsTest {

  static final double TAKEAWAY_S = 1.2;
  static final double TOP_S = 2;
  static final double IMPACT_S = 2.26;

  static double smooth(double t, double fromS, double toS) {
    double u = Math.max(0, Math.min(1, (t - fromS) / (toS - fromS)));
    return u * u * u * (10 - u * (15 - 6 * u));
  }

  /** Cock from the straight wrist, deg: 12 at address, 62 kept from 1.9 to 2.1 s, -8 at 2.3 s. */
  static double cockDeg(double t) {
    return 12 + 50 * smooth(t, 1.3, 1.9) - 70 * smooth(t, 2.1, 2.3);
  }

  static double flexionDeg(double t) {
    return -6 + 15 * smooth(t, 1.4, 2.2);
  }

  static Quaternion forearm(double t) {
    double back = smooth(t, TAKEAWAY_S, TOP_S) - 1.6 * smooth(t, TOP_S, 2.5);
    return Quaternion.aboutZ(0.4 - 0.3 * back)
        .times(Quaternion.aboutY(Math.toRadians(55 - 90 * back)))
        .times(Quaternion.aboutX(Math.toRadians(80 * back)));
  }

  static Quaternion hand(double t) {
    return forearm(t)
        .times(Quaternion.aboutY(Math.toRadians(flexionDeg(t))))
        .times(Quaternion.aboutZ(Math.toRadians(-cockDeg(t))));
  }

  static UnitStream unit(BodyPoint point, Handedness handed, DoubleFunction<Quaternion> attitude) {
    int n = 1700;
    double h = 1e-5;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / 500.0;
      Quaternion before = attitude.apply(time[i] - h);
      Quaternion after = attitude.apply(time[i] + h);
      if (handed == Handedness.LEFT) {
        before = before.mirroredInXz();
        after = after.mirroredInXz();
      }
      Vector3 rate = before.conjugate().times(after).rotationVector().times(0.5 / h);
      Vector3 up = after.conjugate().rotate(Vector3.Z.times(9.81));
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = rate.get(axis);
        accel[axis][i] = up.get(axis);
      }
    }
    UnitFacts facts =
        new UnitFacts(point, "", 500, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, true);
    return new UnitStream(facts, time, accel, gyro);
  }

  static Recording recording(Handedness handed) {
    return new Recording(
        "made",
        Player.unmeasured("p", handed),
        List.of(
            unit(BodyPoint.LEAD_FOREARM, handed, WristLawsTest::forearm),
            unit(BodyPoint.LEAD_HAND, handed, WristLawsTest::hand)),
        List.of());
  }

  static final Recording RIGHT = recording(Handedness.RIGHT);

  static EventTime at(SwingEvent event, double timeS, double sdS) {
    MeasureValue plain = MeasureValue.of(Measure.ARM_PEAK, "", 0, 0, Grade.MEASURED, Reason.NONE);
    return new EventTime(event, timeS, sdS, Grade.MEASURED, plain.why());
  }

  static Swing swing(double topSdS, double impactSdS) {
    return new Swing(
        1,
        SwingKind.HIT,
        "",
        0,
        3.4,
        List.of(
            at(SwingEvent.ADDRESS, 1.1, 0),
            at(SwingEvent.TAKEAWAY, TAKEAWAY_S, 0),
            at(SwingEvent.TOP, TOP_S, topSdS),
            at(SwingEvent.LEAD_ARM_LEVEL_DOWN, 2.13, 0),
            at(SwingEvent.SHAFT_LEVEL_DOWN, 2.19, 0),
            at(SwingEvent.IMPACT, IMPACT_S, impactSdS),
            at(SwingEvent.FINISH, 2.9, 0)),
        List.of());
  }

  static WristReading read(Recording recording, double topSdS, double impactSdS) {
    RestBiases none =
        RestBiases.of(new Recording("none", recording.player(), List.of(), List.of()));
    return WristReading.of(
        recording, none, swing(topSdS, impactSdS), WristSteps.NONE, WristClocks.within(1e-4));
  }

  static MeasureValue find(WristReading reading, Measure measure, String at) {
    return reading.measures().stream()
        .filter(m -> m.measure() == measure && m.at().equals(at))
        .findFirst()
        .orElseThrow();
  }

  static double sd(MeasureValue m) {
    return (m.high() - m.value()) / MeasureValue.Z95;
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void anglesAreThoseSinceAddressOnEitherHand(Handedness handed) {
    // Given: the wrist above, as seen by units that sit as drawn. Expect: cock and flexion since
    // address at each position. Within 0.3 deg: the heading is found from the joint.
    WristReading reading = read(recording(handed), 0, 0);
    for (SwingEvent event :
        List.of(
            SwingEvent.TOP,
            SwingEvent.LEAD_ARM_LEVEL_DOWN,
            SwingEvent.SHAFT_LEVEL_DOWN,
            SwingEvent.IMPACT)) {
      double t = swing(0, 0).event(event).orElseThrow().timeS();
      assertThat(find(reading, Measure.WRIST_COCK, event.word()).value())
          .as(event.word())
          .isCloseTo(cockDeg(t) - 12, within(0.3));
      assertThat(find(reading, Measure.WRIST_FLEXION, event.word()).value())
          .as(event.word())
          .isCloseTo(flexionDeg(t) + 6, within(0.3));
    }
    assertThat(find(reading, Measure.WRIST_COCK_MAX, "").value()).isCloseTo(50, within(0.3));
    assertThat(reading.flags()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theReleaseIsTheLastFallThroughThePlateauLessFifteenDegrees(Handedness handed) {
    // Expect: plateau (90th percentile from the top to 40 ms before impact) of the truth, and when
    // the truth falls 15 deg below it; ms before impact, and percent of the downswing. What chance
    // of skin takes off the plateau is allowed for: within 1.5 deg over the rate there.
    WristReading reading = read(recording(handed), 0, 0);
    double[] cocks =
        IntStream.range(0, 110)
            .mapToDouble(i -> cockDeg(TOP_S + i / 500.0) - 12)
            .sorted()
            .toArray();
    double level = cocks[98] - 15;
    double releaseS = 2.1;
    while (cockDeg(releaseS) - 12 > level) {
      releaseS += 1e-5;
    }
    double rate = (cockDeg(releaseS - 1e-4) - cockDeg(releaseS + 1e-4)) / 2e-4;
    MeasureValue release = find(reading, Measure.WRIST_RELEASE, "");
    assertThat(release.value()).isCloseTo(1000 * (IMPACT_S - releaseS), within(1500 / rate + 0.1));
    double part = 100 * (IMPACT_S - release.value() / 1000 - TOP_S) / (IMPACT_S - TOP_S);
    assertThat(find(reading, Measure.WRIST_RELEASE_PART, "").value()).isCloseTo(part, within(1e-6));
  }

  @Test
  void theRateIsTheSteepestFallAndItsMoment() {
    // Expect: 70 deg over 0.2 s by least jerk, 15/8 of the mean: 656.25 deg/s at 2.2 s, 60 ms
    // before impact. Within 0.5 % and 1 ms: smoothed over 6 ms.
    WristReading reading = read(RIGHT, 0, 0);
    assertThat(find(reading, Measure.WRIST_RATE, "").value()).isCloseTo(656.25, within(3.3));
    assertThat(find(reading, Measure.WRIST_RATE_TIME, "").value()).isCloseTo(60, within(1.0));
  }

  @Test
  void whatIsKeptIsTheCockAtEachLevelAsPartOfThePlateau() {
    WristReading reading = read(RIGHT, 0, 0);
    for (SwingEvent event : List.of(SwingEvent.LEAD_ARM_LEVEL_DOWN, SwingEvent.SHAFT_LEVEL_DOWN)) {
      double t = swing(0, 0).event(event).orElseThrow().timeS();
      double expected = 100 * (cockDeg(t) - 12) / 50;
      assertThat(find(reading, Measure.WRIST_KEPT, event.word()).value())
          .isCloseTo(expected, within(2.0));
    }
  }

  @Test
  void theMirrorShowsTheSame() {
    // Given: the same wrist as a left and as a right one. Expect: every value and interval the
    // same. Within 1e-6: the fit goes other ways through the same numbers.
    WristReading right = read(RIGHT, 0.004, 0.001);
    WristReading left = read(recording(Handedness.LEFT), 0.004, 0.001);
    assertThat(left.measures()).hasSameSizeAs(right.measures());
    for (int i = 0; i < right.measures().size(); i++) {
      MeasureValue r = right.measures().get(i);
      MeasureValue l = left.measures().get(i);
      assertThat(l.measure()).isEqualTo(r.measure());
      assertThat(l.value()).as(r.measure().id() + r.at()).isCloseTo(r.value(), within(1e-4));
      assertThat(l.high()).as(r.measure().id() + r.at()).isCloseTo(r.high(), within(1e-3));
    }
  }

  @ParameterizedTest
  @CsvSource({"0,0.002", "0.008,0", "0.005,0.003"})
  void timesOfEventsEnterTheSpreadsInSquares(double topSdS, double impactSdS) {
    // Given: top and impact known worse. Expect: variance of release and of the rate's time grows
    // by the impact's; of the release's part by (1 - part) of the top's and by the impact's, over
    // the downswing; the cock at the top by its rate times the top's.
    WristReading sure = read(RIGHT, 0, 0);
    WristReading unsure = read(RIGHT, topSdS, impactSdS);
    double impact2 = 1e6 * impactSdS * impactSdS;
    for (Measure measure : List.of(Measure.WRIST_RELEASE, Measure.WRIST_RATE_TIME)) {
      assertThat(grown(sure, unsure, measure, "")).isCloseTo(impact2, within(1e-6));
    }
    double downS = IMPACT_S - TOP_S;
    double part = find(sure, Measure.WRIST_RELEASE_PART, "").value() / 100;
    double both = impactSdS * impactSdS + Math.pow((1 - part) * topSdS, 2);
    assertThat(grown(sure, unsure, Measure.WRIST_RELEASE_PART, ""))
        .isCloseTo(1e4 * both / (downS * downS), within(1e-6));
    double rate = (cockDeg(IMPACT_S + 1e-4) - cockDeg(IMPACT_S - 1e-4)) / 2e-4;
    assertThat(grown(sure, unsure, Measure.WRIST_COCK, "impact"))
        .isCloseTo(Math.pow(rate * impactSdS, 2), within(0.03 * Math.pow(rate * impactSdS, 2)));
  }

  private static double grown(WristReading sure, WristReading unsure, Measure measure, String at) {
    return Math.pow(sd(find(unsure, measure, at)), 2) - Math.pow(sd(find(sure, measure, at)), 2);
  }

  @Test
  void spreadsOfSumsAndChangesHangTogether() {
    // Expect: the variance of a change is that of both less twice what they share, by weights; of
    // one with itself none; the rate's spread is the change's over 20 ms over its time.
    WristMotion motion = read(RIGHT, 0, 0).motion().orElseThrow();
    int a = motion.indexAt(2.05);
    int b = motion.indexAt(2.2);
    assertThat(motion.spreads().changeDeg(a, a)).isCloseTo(0, within(1e-6));
    assertThat(motion.spreads().changeDeg(a, b))
        .isCloseTo(motion.spreads().changeDeg(b, a), within(1e-9));
    double va = Math.pow(motion.spreads().combinedDeg(new int[] {a}, new double[] {1}), 2);
    double vb = Math.pow(motion.spreads().combinedDeg(new int[] {b}, new double[] {1}), 2);
    double change = Math.pow(motion.spreads().changeDeg(a, b), 2);
    double sum = Math.pow(motion.spreads().combinedDeg(new int[] {a, b}, new double[] {1, 1}), 2);
    assertThat(change + sum).isCloseTo(2 * (va + vb), within(1e-9));
    // the skin under each of two units follows the cock by 3 % (our assumption)
    double pulled = 2 * Math.pow(0.03 * motion.cockDeg(b), 2);
    assertThat(motion.spreads().cockDeg(b)).isCloseTo(Math.sqrt(vb + 0.01 + pulled), within(1e-9));
    int k = motion.indexAt(2.1);
    double over =
        motion.spreads().changeDeg(motion.indexAt(2.09), motion.indexAt(2.11))
            / (motion.timeS(motion.indexAt(2.11)) - motion.timeS(motion.indexAt(2.09)));
    assertThat(motion.spreads().cockRateDegPerS(k)).isCloseTo(over, within(0.2 * over));
  }

  @Test
  void timesAreLookedUpAndAnglesLaidOutBetweenSamples() {
    WristMotion motion = read(RIGHT, 0, 0).motion().orElseThrow();
    int k = motion.indexAt(2.2);
    assertThat(motion.timeS(k)).isCloseTo(2.2, within(1e-9));
    assertThat(motion.indexAt(99)).isEqualTo(motion.size());
    assertThat(motion.indexAt(-1)).isZero();
    double between = 0.75 * motion.cockDeg(k) + 0.25 * motion.cockDeg(k + 1);
    assertThat(motion.cockDegAt(motion.timeS(k) + 0.0005)).isCloseTo(between, within(1e-6));
    assertThat(motion.cockDegAt(-5)).isEqualTo(motion.cockDeg(0));
    assertThat(motion.cockDegAt(99)).isCloseTo(motion.cockDeg(motion.size() - 1), within(1e-9));
    assertThat(motion.absoluteCockDeg(k) - motion.cockDeg(k)).isCloseTo(12, within(0.3));
    assertThat(motion.absoluteFlexionDeg(k) - motion.flexionDeg(k)).isCloseTo(-6, within(0.3));
    double rate = (cockDeg(2.2005) - cockDeg(2.1995)) / 0.001;
    assertThat(motion.cockRateDegPerS(k)).isCloseTo(rate, within(5.0));
    assertThat(motion.absolute() || motion.fromShaft() || motion.handMovesOnShaft()).isFalse();
    assertThat(motion.constraintRmsDeg()).isLessThan(0.5);
  }

  @Test
  void curvesFollowTheAnglesAHundredTimesASecond() {
    WristReading reading = read(RIGHT, 0, 0);
    List<Curve> curves = reading.curves(IMPACT_S);
    assertThat(curves).hasSize(2);
    List<Double> time = curves.get(0).timeS();
    assertThat(time.get(time.size() - 1)).isBetween(IMPACT_S - 0.011, IMPACT_S);
    WristMotion motion = reading.motion().orElseThrow();
    for (int i = 1; i < time.size(); i++) {
      assertThat(time.get(i) - time.get(i - 1)).isBetween(0.0089, 0.0101);
      int k = motion.indexAt(time.get(i));
      assertThat(curves.get(0).value().get(i)).isEqualTo(motion.cockDeg(k));
      assertThat(curves.get(0).sd().get(i)).isEqualTo(motion.spreads().cockDeg(k));
      assertThat(curves.get(1).value().get(i)).isEqualTo(motion.flexionDeg(k));
      assertThat(curves.get(1).sd().get(i)).isEqualTo(motion.spreads().flexionDeg(k));
    }
  }

  @ParameterizedTest
  @EnumSource(
      names = {"LEAD_FOREARM", "LEAD_HAND"},
      value = BodyPoint.class)
  void withOneUnitAloneEverythingIsWithheld(BodyPoint alone) {
    Recording half =
        new Recording("half", RIGHT.player(), List.of(RIGHT.unit(alone).orElseThrow()), List.of());
    WristReading reading = read(half, 0, 0);
    assertThat(reading.measures()).hasSize(8).noneMatch(MeasureValue::given);
    assertThat(reading.curves(9)).isEmpty();
  }
}
