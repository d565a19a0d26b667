package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;

/** The pelvis measures of a swing of exact truth, by their definitions in docs/measures.md. */
class PelvisMeasuresTest {

  private static final double HALF_HIPS_MM = 86.5;
  private static final SkinShift NO_SKIN = new SkinShift(0, 0);
  private static final List<EventTime> EVENTS =
      List.of(
          event(SwingEvent.ADDRESS, 0.9),
          event(SwingEvent.TAKEAWAY, MadePelvis.TAKEAWAY_S),
          event(SwingEvent.TOP, MadePelvis.TOP_S),
          event(SwingEvent.IMPACT, MadePelvis.IMPACT_S));

  static EventTime event(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0, Grade.MEASURED, Reason.NONE);
  }

  static List<MeasureValue> measures(MadePelvis made, List<EventTime> events) {
    return PelvisMeasures.of(made.track(), events, HALF_HIPS_MM, NO_SKIN, Reason.NONE, false);
  }

  static MeasureValue find(List<MeasureValue> all, Measure measure, String at) {
    return all.stream()
        .filter(m -> m.measure() == measure && m.at().equals(at))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void everyValueIsItsDefinitionOfTheTruePose(Handedness handed) {
    // Expect: deg and mm of the truth at the top; ratio, share, bound and pole by their formulas,
    // written down here anew. Within 1e-5: the pose is exact, its rate a difference.
    List<MeasureValue> all = measures(MadePelvis.of(handed), EVENTS);
    PelvisPose p = MadePelvis.truth(MadePelvis.TOP_S);
    double turnDeg = Math.toDegrees(p.turnRad());
    assertThat(find(all, Measure.PELVIS_TURN, "top").value()).isCloseTo(turnDeg, within(1e-5));
    assertThat(find(all, Measure.PELVIS_SLIDE, "top").value())
        .isCloseTo(1000 * p.slideM(), within(1e-5));
    assertThat(find(all, Measure.PELVIS_THRUST, "top").value())
        .isCloseTo(1000 * p.thrustM(), within(1e-5));
    assertThat(find(all, Measure.PELVIS_LIFT, "top").value())
        .isCloseTo(1000 * p.liftM(), within(1e-5));
    assertThat(find(all, Measure.PELVIS_TILT, "address").value())
        .isCloseTo(Math.toDegrees(0.3), within(1e-5));
    assertThat(find(all, Measure.PELVIS_SIDETILT, "top").value())
        .isCloseTo(Math.toDegrees(p.sideTiltRad()), within(1e-5));
    assertThat(find(all, Measure.PELVIS_SLIDE_PER_TURN, "top").value())
        .isCloseTo(1000 * p.slideM() / turnDeg, within(1e-5));
    double turnMm = HALF_HIPS_MM * Math.abs(p.turnRad());
    assertThat(find(all, Measure.PELVIS_TURN_SHARE, "top").value())
        .isCloseTo(100 * turnMm / (turnMm + 1000 * Math.abs(p.slideM())), within(1e-4));
    assertPole(all, p);
  }

  /** Seen from mid-hip at address, x towards the target and y away from the ball. */
  @Test
  void thePoseOfAKeyPositionIsReadWhenTheUnitsShowIt() {
    // Given: a top that units on skin show 20 ms later. Expect: the pose of 20 ms later, as the
    // unit of the pelvis is as late; within 1e-5 as above.
    EventTime late =
        new EventTime(SwingEvent.TOP, MadePelvis.TOP_S, 0, Grade.MEASURED, Reason.NONE, 0.02);
    PelvisPose shown = MadePelvis.truth(MadePelvis.TOP_S + 0.02);
    assertThat(
            find(
                    measures(MadePelvis.of(Handedness.RIGHT), List.of(late)),
                    Measure.PELVIS_SLIDE,
                    "top")
                .value())
        .isCloseTo(1000 * shown.slideM(), within(1e-5));
  }

  private static void assertPole(List<MeasureValue> all, PelvisPose p) {
    double c = find(all, Measure.PELVIS_CENTRE_ALONG, "top").value();
    double a = find(all, Measure.PELVIS_CENTRE_ACROSS, "top").value();
    // the pole is where a turn leaves things: turned about it, mid-hip comes to where it is
    double x = -c;
    double y = a;
    double turnedX = Math.cos(p.turnRad()) * x - Math.sin(p.turnRad()) * y;
    double turnedY = Math.sin(p.turnRad()) * x + Math.cos(p.turnRad()) * y;
    assertThat(c + turnedX).isCloseTo(1000 * p.slideM(), within(1e-3));
    assertThat(-a + turnedY).isCloseTo(-1000 * p.thrustM(), within(1e-3));
    // how far: a chord of 2 r sin(turn / 2) is what mid-hip moved
    double moved = 1000 * Math.hypot(p.slideM(), p.thrustM());
    assertThat(find(all, Measure.PELVIS_CENTRE_DISTANCE, "top").value())
        .isCloseTo(moved / (2 * Math.sin(Math.abs(p.turnRad()) / 2)), within(1e-3));
  }

  @Test
  void spreadsAreThoseOfThePose() {
    // Expect: 1.959964 spreads to each side, in deg and mm; slide per turn by first order.
    PelvisTrack track = MadePelvis.of(Handedness.LEFT).track();
    List<MeasureValue> all = measures(MadePelvis.of(Handedness.LEFT), EVENTS);
    PoseSpread spread = PoseSpread.at(track, MadePelvis.TOP_S, 0, SkinCourse.of(NO_SKIN, EVENTS));
    PelvisPose p = spread.pose();
    assertHalf(find(all, Measure.PELVIS_TURN, "top"), Math.toDegrees(spread.sd(0)));
    assertHalf(find(all, Measure.PELVIS_SLIDE, "top"), 1000 * spread.sd(1));
    assertHalf(find(all, Measure.PELVIS_THRUST, "top"), 1000 * spread.sd(2));
    assertHalf(find(all, Measure.PELVIS_LIFT, "top"), 1000 * spread.sd(3));
    assertHalf(find(all, Measure.PELVIS_TILT, "top"), Math.toDegrees(spread.sd(4)));
    assertHalf(find(all, Measure.PELVIS_SIDETILT, "top"), Math.toDegrees(spread.sd(5)));
    double ratio = p.slideM() / p.turnRad();
    double variance =
        Math.pow(spread.sd(1), 2)
            - 2 * ratio * spread.covariance(0, 1)
            + Math.pow(ratio * spread.sd(0), 2);
    double sd = 1000 * Math.sqrt(variance) / Math.abs(Math.toDegrees(p.turnRad()));
    assertHalf(find(all, Measure.PELVIS_SLIDE_PER_TURN, "top"), sd);
  }

  private static void assertHalf(MeasureValue m, double sd) {
    assertThat(m.high() - m.value()).isCloseTo(1.959964 * sd, within(1e-4 * sd + 1e-9));
    assertThat(m.value() - m.low()).isCloseTo(1.959964 * sd, within(1e-4 * sd + 1e-9));
    assertThat(m.grade()).isEqualTo(Grade.MEASURED);
  }

  @Test
  void underFifteenDegreesNoRatioAndUnderTwentyNoCentre() {
    // Given: moments at which the made swing has turned by 14.5, 15.5, 19.5 and 20.5 deg.
    double[] turns = {14.5, 15.5, 19.5, 20.5};
    boolean[] ratio = {false, true, true, true};
    boolean[] centre = {false, false, false, true};
    for (int i = 0; i < turns.length; i++) {
      EventTime at = event(SwingEvent.LEAD_ARM_LEVEL_BACK, whenTurned(turns[i]));
      List<MeasureValue> all = measures(MadePelvis.of(Handedness.RIGHT), List.of(at));
      String word = at.event().word();
      assertThat(Math.abs(find(all, Measure.PELVIS_TURN, word).value()))
          .isCloseTo(turns[i], within(0.01));
      assertThat(find(all, Measure.PELVIS_SLIDE_PER_TURN, word).given()).isEqualTo(ratio[i]);
      assertThat(find(all, Measure.PELVIS_CENTRE_ALONG, word).given()).isEqualTo(centre[i]);
      assertThat(find(all, Measure.PELVIS_CENTRE_ACROSS, word).given()).isEqualTo(centre[i]);
      assertThat(find(all, Measure.PELVIS_CENTRE_DISTANCE, word).given()).isEqualTo(centre[i]);
    }
  }

  private static double whenTurned(double deg) {
    double low = MadePelvis.TAKEAWAY_S;
    double high = MadePelvis.TOP_S - 0.2;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      boolean more = Math.abs(MadePelvis.truth(middle).turnRad()) > Math.toRadians(deg);
      low = more ? low : middle;
      high = more ? middle : high;
    }
    return low;
  }

  @Test
  void turnToSlideIsABoundWhereTheSlideMayBeNone() {
    // Expect: |turn| / |slide|, its ends no nearer than the ends of the slide's interval alone put
    // them (within 1 %, as the directions are 5 deg apart) and no farther than those of turn and
    // slide together; where the slide's interval holds
    // zero, at least the lower end, without an upper end.
    boolean seenBound = false;
    boolean seenRatio = false;
    List<MeasureValue> many = new ArrayList<>();
    for (double t = 1.4; t < 2.9; t += 0.05) {
      many.addAll(
          measures(
              MadePelvis.of(Handedness.RIGHT), List.of(event(SwingEvent.LEAD_ARM_LEVEL_DOWN, t))));
    }
    for (int i = 0; i < many.size(); i++) {
      MeasureValue m = many.get(i);
      if (m.measure() != Measure.PELVIS_TURN_TO_SLIDE) {
        continue;
      }
      MeasureValue turn = before(many, i, Measure.PELVIS_TURN);
      MeasureValue slide = before(many, i, Measure.PELVIS_SLIDE);
      double turnDeg = Math.abs(turn.value());
      double cm = Math.abs(slide.value()) / 10;
      double reach = (slide.high() - slide.value()) / 10;
      double reachDeg = turn.high() - turn.value();
      double least = turnDeg / (cm + reach);
      double leastOfBoth = Math.max(0, turnDeg - reachDeg) / (cm + reach);
      assertThat(m.low()).isBetween(leastOfBoth - 1e-9, least * 1.01);
      if (cm <= reach) {
        seenBound = true;
        assertThat(m.value()).isEqualTo(m.low());
        assertThat(m.high()).isInfinite();
      } else {
        seenRatio = true;
        assertThat(m.value()).isCloseTo(turnDeg / cm, within(1e-9 * turnDeg / cm));
        double most = turnDeg / (cm - reach);
        double mostOfBoth = (turnDeg + reachDeg) / (cm - reach);
        assertThat(m.high()).isBetween(most * 0.99, mostOfBoth * (1 + 1e-9));
      }
    }
    assertThat(seenBound && seenRatio).isTrue();
  }

  private static MeasureValue before(List<MeasureValue> all, int i, Measure measure) {
    for (int k = i; k >= 0; k--) {
      if (all.get(k).measure() == measure) {
        return all.get(k);
      }
    }
    throw new IllegalArgumentException("no " + measure);
  }

  @Test
  void whatHardlyMovedHasNoShare() {
    // Given: moments before and after 15 mm of turn of the hips, 15 / 86.5 rad = 9.94 deg.
    for (double deg : new double[] {9.7, 10.2}) {
      EventTime at = event(SwingEvent.LEAD_ARM_LEVEL_BACK, whenTurned(deg));
      List<MeasureValue> all = measures(MadePelvis.of(Handedness.RIGHT), List.of(at));
      assertThat(Math.abs(MadePelvis.truth(at.timeS()).slideM())).isLessThan(0.015);
      assertThat(find(all, Measure.PELVIS_TURN_SHARE, at.event().word()).given())
          .isEqualTo(deg > 10);
    }
  }

  @ParameterizedTest
  @CsvSource({"-20,true", "20,true", "-14,false", "14,false"})
  void aSlideEitherWayIsAMoveToo(double slideMm, boolean given) {
    // Given: hardly a turn (1 deg, 1.5 mm of the hips), and a slide. Expect: a share of 1.51 in
    // 21.51, 7.0 %, from 15 mm of slide on.
    double[] pose = {Math.toRadians(1), slideMm / 1000, 0, 0, 0, 0};
    double[][] exact = new double[6][1];
    MeasureValue share =
        new TurnAndSlide(
                new PoseSpread(PelvisPose.of(pose), exact),
                "top",
                Grade.MEASURED,
                Reason.NONE,
                HALF_HIPS_MM)
            .of(Measure.PELVIS_TURN_SHARE);
    assertThat(share.given()).isEqualTo(given);
    if (given) {
      assertThat(share.value()).isCloseTo(7.02, within(0.01));
    }
  }

  @Test
  void theShareReachesFromItsLeastToItsMostOverTurnsAndSlidesWithinTheirSpreads() {
    MeasureValue share =
        find(measures(MadePelvis.of(Handedness.RIGHT), EVENTS), Measure.PELVIS_TURN_SHARE, "top");
    PelvisTrack track = MadePelvis.of(Handedness.RIGHT).track();
    PoseSpread spread = PoseSpread.at(track, 400, SkinCourse.of(NO_SKIN, EVENTS));
    Range by =
        Range.of(
            spread,
            0,
            1,
            (t, s) ->
                100
                    * HALF_HIPS_MM
                    * Math.abs(t)
                    / (HALF_HIPS_MM * Math.abs(t) + 1e3 * Math.abs(s)));
    assertThat(share.low()).isCloseTo(by.low(), within(1e-3));
    assertThat(share.high()).isCloseTo(by.high(), within(1e-3));
  }

  @Test
  void whichMeasuresAKeyPositionHas() {
    // Expect: at address the tilts alone; at takeaway no ratio; at the others all twelve; once the
    // circle. Outside the stretch turn and slide are withheld.
    List<MeasureValue> all = measures(MadePelvis.of(Handedness.RIGHT), EVENTS);
    assertThat(all.stream().filter(m -> m.at().equals("address"))).hasSize(2);
    assertThat(all.stream().filter(m -> m.at().equals("takeaway"))).hasSize(6);
    assertThat(all.stream().filter(m -> m.at().equals("top"))).hasSize(12);
    assertThat(all.stream().filter(m -> m.at().isEmpty())).hasSize(1);
    for (double t : new double[] {-0.03, 3.03}) {
      List<MeasureValue> out =
          measures(MadePelvis.of(Handedness.RIGHT), List.of(event(SwingEvent.FINISH, t)));
      assertThat(out).hasSize(3).noneMatch(MeasureValue::given);
    }
    for (double t : new double[] {-0.01, 3.01}) {
      List<MeasureValue> edge =
          measures(MadePelvis.of(Handedness.RIGHT), List.of(event(SwingEvent.FINISH, t)));
      assertThat(find(edge, Measure.PELVIS_TURN, "finish").given()).isTrue();
    }
  }

  @Test
  void theCircleHoldsMidHipFromTakeawayToImpact() {
    // Given: the truth seen every 5 ms. Expect: the radius of its smallest circle; its spread as
    // large as the radius of swings that are off by each error (central differences), and 4 mm of
    // skin over root 2. Within 1 % and 0.01 mm.
    SkinShift skin = new SkinShift(0, 0.004);
    PelvisTrack track = MadePelvis.of(Handedness.LEFT).track();
    MeasureValue circle =
        find(
            PelvisMeasures.of(track, EVENTS, HALF_HIPS_MM, skin, Reason.NONE, false),
            Measure.PELVIS_CIRCLE,
            "");
    assertThat(circle.value()).isCloseTo(radiusMm(track), within(0.01));
    double variance = 0.5 * 16;
    double[][] root =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(MadePelvis.jointCovariance()))
            .getL()
            .getData();
    for (int e = 0; e < 9; e++) {
      double[] put = new double[9];
      double[] back = new double[9];
      for (int i = 0; i < 9; i++) {
        put[i] = 0.1 * root[i][e];
        back[i] = -put[i];
      }
      double change =
          (radiusMm(MadePelvis.of(Handedness.LEFT).with(put).track())
                  - radiusMm(MadePelvis.of(Handedness.LEFT).with(back).track()))
              / 0.2;
      variance += change * change;
    }
    double half = 1.959964 * Math.sqrt(variance);
    assertThat(circle.high() - circle.value()).isCloseTo(half, within(0.1 * half));
    assertThat(circle.low()).isCloseTo(Math.max(0, circle.value() - half), within(0.1 * half));
  }

  private static double radiusMm(PelvisTrack track) {
    int n = 251;
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      PelvisPose pose = track.pose(210 + i);
      x[i] = 1000 * pose.slideM();
      y[i] = 1000 * pose.thrustM();
    }
    return SmallestCircle.radius(x, y);
  }

  @Test
  void aCaveatMakesEveryValueAnEstimate() {
    List<MeasureValue> all =
        PelvisMeasures.of(
            MadePelvis.of(Handedness.RIGHT).track(),
            EVENTS,
            HALF_HIPS_MM,
            NO_SKIN,
            Reason.of(MeasureReason.ADDRESS_NOT_STILL),
            false);
    assertThat(all).allMatch(m -> m.grade() != Grade.MEASURED);
    EventTime guessed =
        new EventTime(
            SwingEvent.TOP,
            MadePelvis.TOP_S,
            0,
            Grade.ESTIMATED,
            Reason.of(EventReason.FROM_PELVIS));
    MeasureValue turn =
        find(
            measures(MadePelvis.of(Handedness.RIGHT), List.of(guessed)),
            Measure.PELVIS_TURN,
            "top");
    assertThat(turn.grade()).isEqualTo(Grade.ESTIMATED);
  }

  @Test
  void curvesShowThePoseInDegreesAndMillimetresAHundredTimesASecond() {
    PelvisTrack track = MadePelvis.of(Handedness.RIGHT).track();
    List<Curve> curves = PelvisCurves.of(track, EVENTS, NO_SKIN);
    assertThat(curves).hasSize(6);
    assertThat(curves.get(0).timeS()).hasSize(301);
    for (int c = 0; c < 6; c++) {
      double scale = c == 0 || c > 3 ? 180 / Math.PI : 1000;
      double at = curves.get(c).timeS().get(200);
      assertThat(at).isCloseTo(2, within(1e-9));
      double truth = MadePelvis.truth(2).toArray()[c];
      assertThat(curves.get(c).value().get(200)).isCloseTo(scale * truth, within(1e-6));
      PoseSpread spread = PoseSpread.at(track, 400, SkinCourse.of(NO_SKIN, EVENTS));
      assertThat(curves.get(c).sd().get(200)).isCloseTo(scale * spread.sd(c), within(1e-9));
    }
  }
}
