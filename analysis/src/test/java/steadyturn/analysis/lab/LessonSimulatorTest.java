package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

class LessonSimulatorTest {

  private static final int PLAYERS = 60;
  private static final List<SwingTruth> MIXED = new ArrayList<>();

  private static LessonSpec brief() {
    return LessonSpec.standard()
        .withHits(2)
        .withPractices(0)
        .withWalking(false)
        .withWearSteps(false)
        .withWaggles(0)
        .withUnits(Set.of(BodyPoint.PELVIS))
        .withRateHz(100);
  }

  @BeforeAll
  static void simulateSixtyPlayers() {
    System.out.println("seeds 0.." + (PLAYERS - 1));
    for (int seed = 0; seed < PLAYERS; seed++) {
      MIXED.addAll(LessonSimulator.simulate(brief(), seed).truth().swings());
    }
  }

  private static double[] of(ToDoubleFunction<SwingTruth> value) {
    return MIXED.stream().mapToDouble(value).toArray();
  }

  private static double when(SwingTruth swing, SwingEvent event) {
    return swing.eventS(event).orElseThrow();
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    return sum / values.length;
  }

  private static double sd(double[] values) {
    double m = mean(values);
    double sum = 0;
    for (double v : values) {
      sum += (v - m) * (v - m);
    }
    return Math.sqrt(sum / (values.length - 1));
  }

  private static double least(double[] values) {
    return java.util.Arrays.stream(values).min().orElseThrow();
  }

  private static double most(double[] values) {
    return java.util.Arrays.stream(values).max().orElseThrow();
  }

  @Test
  void mixedPlayersTurnAndSlideOverTheWholeRange() {
    // Given: 60 players, two swings each. Expect: turn about -45 +- 12 deg at the top and 40 +- 12
    // at impact, slide -80..+40 mm and +40..+140 mm. Means within 5 deg (three times 12 / sqrt 60),
    // spreads within 3; slides may pass their range by three swing spreads of 12 mm.
    double[] turnTop = of(s -> Math.toDegrees(s.at(when(s, SwingEvent.TOP)).turnRad()));
    double[] turnImpact = of(s -> Math.toDegrees(s.at(when(s, SwingEvent.IMPACT)).turnRad()));
    double[] slideTop = of(s -> 1000 * s.at(when(s, SwingEvent.TOP)).slideM());
    double[] slideImpact = of(s -> 1000 * s.at(when(s, SwingEvent.IMPACT)).slideM());
    assertThat(mean(turnTop)).isCloseTo(-45, within(5.0));
    assertThat(sd(turnTop)).isBetween(8.0, 14.0);
    assertThat(mean(turnImpact)).isCloseTo(40, within(5.0));
    assertThat(sd(turnImpact)).isBetween(8.0, 14.0);
    assertThat(least(slideTop)).isBetween(-116.0, -40.0);
    assertThat(most(slideTop)).isBetween(10.0, 76.0);
    assertThat(least(slideImpact)).isBetween(0.0, 70.0);
    assertThat(most(slideImpact)).isBetween(110.0, 176.0);
  }

  @Test
  void armAndWristAreAsFastAsThoseOfGolfers() {
    // Expect: lead arm beyond 500 deg/s in each downswing (the finder's bound); peak uncocking
    // 700..1670 deg/s, the range of driven pendulums, and its mean within 1085 +- 338 deg/s (Zheng
    // et al. 2008, Int J Sports Med 29:487-493, 18 professionals).
    double[] arm =
        of(
            s -> {
              double peakS =
                  when(s, SwingEvent.IMPACT)
                      - s.truth(Measure.ARM_PEAK, "").orElseThrow().value() / 1000;
              return Math.toDegrees(s.armRateRadPerS(peakS));
            });
    double[] uncock = of(s -> s.truth(Measure.WRIST_RATE, "").orElseThrow().value());
    assertThat(least(arm)).isGreaterThan(520);
    assertThat(least(uncock)).isGreaterThan(700);
    assertThat(most(uncock)).isLessThan(1670);
    assertThat(mean(uncock)).isBetween(1085.0 - 338, 1085.0 + 338);
  }

  @Test
  void keyPositionsComeInTheirOrderAndTheTempoIsThatOfGolfers() {
    // Expect: all ten, in order but for the pelvis, which turns round before the hands; backswing
    // 0.35..1.8 s, downswing 0.08..0.6 s.
    for (SwingTruth s : MIXED) {
      assertThat(s.eventsS()).hasSize(10);
      double lastS = Double.NEGATIVE_INFINITY;
      for (SwingEvent event : SwingEvent.values()) {
        if (event != SwingEvent.PELVIS_TURNAROUND) {
          assertThat(when(s, event)).as(event.word()).isGreaterThan(lastS);
          lastS = when(s, event);
        }
      }
      assertThat(when(s, SwingEvent.PELVIS_TURNAROUND)).isLessThan(when(s, SwingEvent.TOP));
      double downS = when(s, SwingEvent.IMPACT) - when(s, SwingEvent.TOP);
      double backS = when(s, SwingEvent.TOP) - when(s, SwingEvent.TAKEAWAY);
      assertThat(downS).isBetween(0.15, 0.45);
      assertThat(backS).isBetween(0.5, 1.2);
    }
  }

  @Test
  void theSwingingBodySwaysAtAddressAndMoreAtTheFinish() {
    // Given: true velocities in 0.6 s of address and in 0.5 s of the held finish of 120 swings.
    // Expect: 4 and 12 mm/s along x. Within 15 %: about 240 free values, 5 % of spread, three
    // times.
    double address = 0;
    double finish = 0;
    int n = 0;
    for (SwingTruth s : MIXED) {
      for (double t = 0; t < 0.5; t += 0.05) {
        address += Math.pow(slideRateMps(s, when(s, SwingEvent.TAKEAWAY) - 0.7 + t), 2);
        finish += Math.pow(slideRateMps(s, when(s, SwingEvent.IMPACT) + 0.95 + t), 2);
        n++;
      }
    }
    assertThat(1000 * Math.sqrt(address / n)).isCloseTo(4, within(0.6));
    assertThat(1000 * Math.sqrt(finish / n)).isCloseTo(12, within(1.8));
  }

  private static double slideRateMps(SwingTruth s, double timeS) {
    double h = 1e-4;
    return (s.at(timeS + h).slideM() - s.at(timeS - h).slideM()) / (2 * h);
  }

  @Test
  void theWobbleIsOfFiveToEightHertzAndOneToTwoDegrees() {
    // Given: one player with and without wobble. Expect: the difference of turn peaks between 0.6
    // and 2 deg (the sine may miss the top of its window) and changes sign 5..8 times a second,
    // twice a cycle; nothing of it at address.
    LessonSpec steel = brief().withBody(BodyErrors.none());
    LessonSpec wobbly = brief().withBody(BodyErrors.none().withWobble());
    SwingTruth without = LessonSimulator.simulate(steel, 4).truth().swings().get(0);
    SwingTruth with = LessonSimulator.simulate(wobbly, 4).truth().swings().get(0);
    double topS = when(with, SwingEvent.TOP);
    double impactS = when(with, SwingEvent.IMPACT);
    double peak = 0;
    List<Double> crossings = new ArrayList<>();
    double before = 0;
    for (double t = topS - 0.1; t < impactS + 0.2; t += 0.001) {
      double now = with.at(t).turnRad() - without.at(t).turnRad();
      peak = Math.max(peak, Math.abs(Math.toDegrees(now)));
      if (now * before < 0) {
        crossings.add(t);
      }
      before = now;
    }
    double span = crossings.get(crossings.size() - 1) - crossings.get(0);
    assertThat(peak).isBetween(0.6, 2.0);
    assertThat((crossings.size() - 1) / span / 2).isBetween(4.8, 8.2);
    assertThat(with.at(topS - 0.9).turnRad()).isCloseTo(0, within(1e-3));
  }

  @Test
  void theSameSeedGivesTheSameLessonAndAnotherSeedAnother() {
    LessonSpec spec = brief().withHits(1);
    UnitStream one = LessonSimulator.simulate(spec, 9).recording().units().get(0);
    UnitStream same = LessonSimulator.simulate(spec, 9).recording().units().get(0);
    UnitStream other = LessonSimulator.simulate(spec, 10).recording().units().get(0);
    assertThat(same.gyroColumnRadPerS(0)).isEqualTo(one.gyroColumnRadPerS(0));
    assertThat(other.gyroColumnRadPerS(0)).isNotEqualTo(one.gyroColumnRadPerS(0));
  }

  @Test
  void switchingSkinShiftOffLeavesTheTruthAsItWas() {
    // Given: one seed with and without skin shift. Expect: the same truth to the last bit, other
    // streams: one source of error at a time can be studied.
    SyntheticLesson with = LessonSimulator.simulate(brief(), 6);
    SyntheticLesson without =
        LessonSimulator.simulate(brief().withBody(BodyErrors.standard().withoutSkinShift()), 6);
    double impactS = when(with.truth().swings().get(0), SwingEvent.IMPACT);
    assertThat(without.truth().swings().get(0).at(impactS))
        .isEqualTo(with.truth().swings().get(0).at(impactS));
    assertThat(without.truth().leverArmUnitM()).isEqualTo(with.truth().leverArmUnitM());
    assertThat(without.recording().units().get(0).gyroColumnRadPerS(0))
        .isNotEqualTo(with.recording().units().get(0).gyroColumnRadPerS(0));
  }

  @Test
  void skinShiftIsNoneAtAddress() {
    // Given: as above, without noise of sway. Expect: before the takeaway both streams agree (one
    // step of the converter), in the downswing they do not.
    SyntheticLesson with =
        LessonSimulator.simulate(brief().withBody(BodyErrors.none().withSkinShift()), 6);
    SyntheticLesson without = LessonSimulator.simulate(brief().withBody(BodyErrors.none()), 6);
    UnitStream a = with.recording().units().get(0);
    UnitStream b = without.recording().units().get(0);
    SwingTruth swing = with.truth().swings().get(0);
    int address = a.indexAt(when(swing, SwingEvent.TAKEAWAY) - 0.3);
    assertThat(a.gyroRadPerS(0, address)).isEqualTo(b.gyroRadPerS(0, address));
    double moved = 0;
    int impact = a.indexAt(when(swing, SwingEvent.IMPACT));
    for (int k = impact - 20; k < impact; k++) {
      moved = Math.max(moved, Math.abs(a.gyroRadPerS(0, k) - b.gyroRadPerS(0, k)));
    }
    assertThat(Math.toDegrees(moved)).isBetween(0.5, 60.0);
  }

  @Test
  void aDriftingAddressMovesAtItsSpeedAndHardlyTurns() {
    // Given: 9 cm/s, no sway. Expect: slide rate 0.09 m/s from 0.9 to 0.1 s before the takeaway,
    // turn under 0.1 deg. Within 1e-6 m/s: the ramp is exact, the difference quotient is not.
    LessonSpec spec =
        brief().withBody(BodyErrors.none()).withClockSkewPpm(0).withAddressDriftMps(0.09);
    SwingTruth swing = LessonSimulator.simulate(spec, 2).truth().swings().get(0);
    double takeawayS = when(swing, SwingEvent.TAKEAWAY);
    for (double t = takeawayS - 0.9; t < takeawayS - 0.1; t += 0.05) {
      assertThat(slideRateMps(swing, t)).isCloseTo(0.09, within(1e-6));
      assertThat(Math.toDegrees(swing.at(t).turnRad())).isCloseTo(0, within(0.1));
    }
  }

  @Test
  void aFinishThatIsNotHeldHasNoStillness() {
    // Given: finish held and not. Expect: after impact some 0.25 s under 9 deg/s, or none.
    assertThat(stillAfterImpactS(true)).isGreaterThan(0.5);
    assertThat(stillAfterImpactS(false)).isLessThan(0.2);
  }

  private static double stillAfterImpactS(boolean held) {
    LessonSpec spec = brief().withFinishHeld(held).withPlayer(PlayerStyle.steadyTurner());
    SyntheticLesson lesson = LessonSimulator.simulate(spec, 12);
    UnitStream s = lesson.recording().units().get(0);
    double impactS = when(lesson.truth().swings().get(0), SwingEvent.IMPACT);
    double longest = 0;
    double since = impactS;
    for (int k = s.indexAt(impactS); s.timeS(k) < impactS + 2; k++) {
      if (s.gyroNormRadPerS(k) > Math.toRadians(9)) {
        since = s.timeS(k);
      }
      longest = Math.max(longest, s.timeS(k) - since);
    }
    return longest;
  }

  @Test
  void hitsRingAtHandAndForearmAndPracticeSwingsDoNot() {
    // Given: hits and practice swings. Expect: at the hand the acceleration of a hit jumps by more
    // than 8 g in 2 ms at impact, that of a practice swing through turf (5 g at 70 Hz change by 4.4
    // g in 2 ms, the swing by
    // half a g) never by more than 6 g.
    LessonSpec spec =
        LessonSpec.standard()
            .withHits(3)
            .withPractices(3)
            .withWalking(false)
            .withWearSteps(false)
            .withTurfBrush(true);
    SyntheticLesson lesson = LessonSimulator.simulate(spec, 8);
    UnitStream hand = lesson.recording().unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(lesson.truth().swings()).hasSize(6);
    for (SwingTruth swing : lesson.truth().swings()) {
      double impactS = when(swing, SwingEvent.IMPACT);
      double jump = 0;
      for (int k = hand.indexAt(impactS - 0.03); hand.timeS(k) < impactS + 0.03; k++) {
        double change = 0;
        for (int axis = 0; axis < 3; axis++) {
          change += Math.pow(hand.accelMps2(axis, k) - hand.accelMps2(axis, k - 1), 2);
        }
        jump = Math.max(jump, Math.sqrt(change) / UnitErrors.G_MPS2);
      }
      if (swing.kind() == SwingKind.HIT) {
        assertThat(jump).isGreaterThan(8);
      } else {
        assertThat(jump).isLessThan(6);
      }
    }
  }

  @Test
  void marksNameEveryWearStepAndSwingAndCanBeLeftOut() {
    LessonSpec spec =
        LessonSpec.standard().withHits(2).withPractices(1).withClubs(List.of("7-iron"));
    SyntheticLesson lesson = LessonSimulator.simulate(spec, 1);
    assertThat(
            lesson.recording().marks().stream().map(Mark::trialType).collect(Collectors.toList()))
        .containsExactly(
            "table-rest",
            "aim",
            "quiet-stance",
            "bow",
            "neutral-wrist",
            "cocking",
            "turn-on-spot",
            "hit",
            "hit",
            "practice");
    assertThat(LessonSimulator.simulate(spec.withMarks(false), 1).recording().marks()).isEmpty();
  }

  @Test
  void everyBodyPointCanWearAUnitAndStillFeelsGravityAtAddress() {
    // Given: all five units, a body of steel. Expect: at address the size of the specific force is
    // gravity; within 0.2 m/s^2: three spreads of 3 mg, 0.1 % and noise at 100 Hz are 0.1, twice
    // that.
    LessonSpec spec =
        brief().withUnits(Set.of(BodyPoint.values())).withBody(BodyErrors.none()).withHits(1);
    SyntheticLesson lesson = LessonSimulator.simulate(spec, 5);
    assertThat(lesson.recording().units()).hasSize(5);
    double addressS = when(lesson.truth().swings().get(0), SwingEvent.TAKEAWAY) - 0.4;
    for (UnitStream s : lesson.recording().units()) {
      assertThat(s.accelNormMps2(s.indexAt(addressS)))
          .as(s.point().trackedPoint())
          .isCloseTo(UnitErrors.G_MPS2, within(0.2));
      assertThat(lesson.truth().unit(s.point())).isPresent();
    }
  }

  @Test
  void aPuttIsNotAFullSwing() {
    // Given: two putts after one hit. Expect: one swing in the truth; arm rate of a putt far below
    // the finder's 500 deg/s, so the forearm unit stays under 200 deg/s in the last seconds.
    LessonSpec spec =
        LessonSpec.standard().withHits(1).withPractices(0).withPutts(2).withWalking(false);
    SyntheticLesson lesson = LessonSimulator.simulate(spec.withWearSteps(false), 1);
    assertThat(lesson.truth().swings()).hasSize(1);
    UnitStream forearm = lesson.recording().unit(BodyPoint.LEAD_FOREARM).orElseThrow();
    double fastest = 0;
    for (int k = forearm.indexAt(forearm.timeS(forearm.size() - 1) - 8); k < forearm.size(); k++) {
      fastest = Math.max(fastest, forearm.gyroNormRadPerS(k));
    }
    assertThat(Math.toDegrees(fastest)).isBetween(40.0, 200.0);
  }

  @Test
  void stylesDifferInWhatTheyAreNamedFor() {
    // Given: one player of each style. Expect: a slider slides twice as far as he turns less; an
    // early release comes well before a late one; a fast tempo has the shorter downswing.
    SwingTruth steady = first(PlayerStyle.steadyTurner());
    SwingTruth slider = first(PlayerStyle.slider());
    double topSteady = steady.at(when(steady, SwingEvent.TOP)).slideM();
    double topSlider = slider.at(when(slider, SwingEvent.TOP)).slideM();
    assertThat(topSlider).isLessThan(topSteady - 0.02);
    assertThat(slider.at(when(slider, SwingEvent.TOP)).turnRad())
        .isGreaterThan(steady.at(when(steady, SwingEvent.TOP)).turnRad());
    double early = value(first(PlayerStyle.earlyRelease()), Measure.WRIST_RELEASE);
    double late = value(first(PlayerStyle.lateRelease()), Measure.WRIST_RELEASE);
    assertThat(early - late).isGreaterThan(40);
    assertThat(value(first(PlayerStyle.fastTempo()), Measure.TEMPO_DOWN))
        .isLessThan(value(steady, Measure.TEMPO_DOWN));
  }

  private static SwingTruth first(PlayerStyle style) {
    return LessonSimulator.simulate(brief().withPlayer(style), 3).truth().swings().get(0);
  }

  private static double value(SwingTruth swing, Measure measure) {
    return swing.truth(measure, "").orElseThrow().value();
  }
}
