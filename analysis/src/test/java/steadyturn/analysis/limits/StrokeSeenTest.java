package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Over which moments of a stroke its figures are taken, by forces that grow evenly with time, whose
 * mean tells the stretch. Given in all: takeaway at 1 s, top at 1.5 s, impact at 1.8 s.
 */
@SuppressWarnings("EnumOrdinal") // moments a second apart, in their order
class StrokeSeenTest {

  private static final Stroke STROKE = new Stroke(1, 1.5, 1.8);

  /** Before the takeaway the force leans: its y grows by 2 m/s^2 a second, to 0 at the takeaway. */
  private static final Vector3 GRAVITY = new Vector3(0, 2 * -0.265, 9.8);

  private static UnitStream unit(double rateHz, double endS, double times) {
    int n = (int) Math.round(rateHz * endS);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    Vector3 yaw = GRAVITY.unit().times(2);
    for (int i = 0; i < n; i++) {
      double t = i / rateHz;
      timeS[i] = t;
      accel[0][i] = t < 1 ? 0 : 100 * (1.8 - t);
      accel[1][i] = times * (t < 1 ? 2 * (t - 1) : GRAVITY.y());
      accel[2][i] = times * GRAVITY.z();
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = t < 1 ? 0 : yaw.get(axis);
      }
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, rateHz), timeS, accel, gyro);
  }

  @Test
  void eachFigureIsTakenOverItsStretch() {
    // Given: from the takeaway on 2 rad/s about the vertical, a push along x of 100 m/s^2 a second
    // to impact. Expect: up of 0.5 to 0.03 s before the takeaway, whose mean is 0.265 s before it;
    // the turn from the top to 5 ms before impact; the push of 80 to 10 ms, whose mean is 45 ms.
    // Within the steps of 0.2 ms.
    StrokeSeen seen = StrokeSeen.of(unit(5000, 2.1, 1), STROKE).orElseThrow();
    assertThat(seen.up().y() / seen.up().z()).isCloseTo(-0.53 / 9.8, within(3e-5));
    assertThat(seen.turnDownRad()).isCloseTo(2 * 0.295, within(4.5e-4));
    assertThat(seen.pull().x()).isCloseTo(4.5, within(0.015));
    assertThat(seen.pull().y()).isCloseTo(0, within(1e-3));
    assertThat(seen.reachM()).isCloseTo(-4.5 / 4, within(4e-3));
    assertThat(seen.fastestRadPerS()).isCloseTo(2, within(1e-9));
  }

  @Test
  void gravityIsFollowedThroughATurnAboutALevelAxis() {
    // Given: from the takeaway on 2 rad/s about y, gravity alone felt: along z first, by u' = u x w
    // then (-sin, 0, cos) of the angle. Expect: no push, no turn about the vertical. Within 0.02
    // m/s^2: a sample of 0.2 ms is taken at its end.
    UnitStream unit = unit(5000, 2.1, 0);
    for (int i = 0; i < unit.size(); i++) {
      double angle = 2 * Math.max(0, unit.timeS(i) - 1);
      unit.accelColumnMps2(0)[i] = -9.8 * Math.sin(angle);
      unit.accelColumnMps2(2)[i] = 9.8 * Math.cos(angle);
      unit.gyroColumnRadPerS(0)[i] = 0;
      unit.gyroColumnRadPerS(1)[i] = angle > 0 ? 2 : 0;
      unit.gyroColumnRadPerS(2)[i] = 0;
    }
    StrokeSeen seen = StrokeSeen.of(unit, STROKE).orElseThrow();
    assertThat(seen.pull().norm()).isLessThan(0.02);
    assertThat(seen.turnDownRad()).isCloseTo(0, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1.86, true", "1.84, false"})
  void nineTenthsToAFifthOfASecondAfterImpactMustBeThere(double endS, boolean isSeen) {
    // 1.5 s from half a second before the takeaway: to 1.85 s.
    assertThat(StrokeSeen.of(unit(200, endS, 1), STROKE).isPresent()).isEqualTo(isSeen);
  }

  @ParameterizedTest
  @CsvSource({"28, true", "32, false"})
  void aLostSampleIsNotSeen(int lost, boolean isSeen) {
    UnitStream unit = unit(200, 2.1, 1);
    for (int i = 0; i < lost; i++) {
      unit.gyroColumnRadPerS(1)[210 + 4 * i] = Double.NaN;
    }
    assertThat(StrokeSeen.of(unit, STROKE).isPresent()).isEqualTo(isSeen);
  }

  @ParameterizedTest
  @CsvSource({"4.45, true", "4.55, false"})
  void aStrokeThatLastsTooLongIsNone(double impactS, boolean isSeen) {
    Stroke slow = new Stroke(1, 3, impactS);
    assertThat(StrokeSeen.of(unit(200, 5, 1), slow).isPresent()).isEqualTo(isSeen);
  }

  @ParameterizedTest
  @CsvSource({"0.105, true", "0.099, false"})
  void aUnitWithoutGravityHasNoUp(double times, boolean isSeen) {
    // 9.81 m/s^2 times so much: our bound is 1 m/s^2.
    assertThat(StrokeSeen.of(unit(200, 2.1, times), STROKE).isPresent()).isEqualTo(isSeen);
  }

  private static Swing swing(List<SwingEvent> events) {
    List<EventTime> times =
        events.stream()
            .map(e -> new EventTime(e, 1 + e.ordinal(), 0.01, Grade.MEASURED, Reason.NONE))
            .toList();
    return new Swing(1, SwingKind.HIT, "", 0, 20, times, List.of());
  }

  @ParameterizedTest
  @EnumSource(
      value = SwingEvent.class,
      names = {"TAKEAWAY", "TOP", "IMPACT"})
  void aSwingIsAStrokeWhereItsThreeMomentsAreKnown(SwingEvent missing) {
    List<SwingEvent> all = List.of(SwingEvent.TAKEAWAY, SwingEvent.TOP, SwingEvent.IMPACT);
    assertThat(Stroke.of(List.of(swing(all))))
        .containsExactly(
            new Stroke(
                1 + SwingEvent.TAKEAWAY.ordinal(),
                1 + SwingEvent.TOP.ordinal(),
                1 + SwingEvent.IMPACT.ordinal()));
    List<SwingEvent> others = Stream.of(SwingEvent.values()).filter(e -> e != missing).toList();
    assertThat(Stroke.of(List.of(swing(others)))).isEmpty();
  }
}
