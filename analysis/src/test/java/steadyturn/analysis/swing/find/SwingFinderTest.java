package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.analysis.tempo.OrderMeasures;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** One simulated lesson of three hits and a practice swing at 200 Hz, seed 12, taken apart. */
class SwingFinderTest {

  private static final SyntheticLesson LESSON =
      LessonSimulator.simulate(
          LessonSpec.standard()
              .withHits(3)
              .withPractices(1)
              .withClubs(List.of("7-iron"))
              .withWalking(false)
              .withRateHz(200)
              .withClockSkewPpm(0)
              .withUnitStartErrorS(0),
          12);
  private static final Recording RECORDING = LESSON.recording();
  private static final List<Swing> SWINGS = SwingFinder.withDefaults().find(RECORDING);

  private static Recording with(List<UnitStream> units, List<Mark> marks) {
    return new Recording("r", RECORDING.player(), units, marks);
  }

  private static Recording only(BodyPoint... points) {
    return with(
        RECORDING.units().stream().filter(u -> Arrays.asList(points).contains(u.point())).toList(),
        List.of());
  }

  private static double timeS(Swing swing, SwingEvent event) {
    return swing.event(event).map(EventTime::timeS).orElseThrow();
  }

  @Test
  void aSwingHasItsKeyPositionsInOrder() {
    assertThat(SWINGS).hasSize(4);
    for (Swing swing : SWINGS) {
      List<SwingEvent> found = swing.events().stream().map(EventTime::event).toList();
      assertThat(found).containsExactlyElementsOf(EnumSet.allOf(SwingEvent.class));
      assertThat(timeS(swing, SwingEvent.TOP)).isLessThan(timeS(swing, SwingEvent.IMPACT));
    }
  }

  @Test
  void marksGiveClubAndKindAndAreNotNeededToFindASwing() {
    // Given: the same recording without its marks. Expect: the same swings, the kind from the
    // shock, no club.
    List<Swing> bare = SwingFinder.withDefaults().find(with(RECORDING.units(), List.of()));
    assertThat(bare.stream().map(Swing::kind)).containsExactlyElementsOf(kinds(SWINGS));
    assertThat(kinds(SWINGS)).containsOnlyOnce(SwingKind.PRACTICE);
    assertThat(SWINGS).allMatch(s -> s.club().equals("7-iron"));
    assertThat(bare).allMatch(s -> s.club().isEmpty());
  }

  private static List<SwingKind> kinds(List<Swing> swings) {
    return swings.stream().map(Swing::kind).toList();
  }

  @Test
  void aHitNotedAsPracticeKeepsTheNoteAndSaysWhatWasFelt() {
    // Given: the first hit marked as a practice swing. Expect: the mark decides, the flag tells.
    double impactS = timeS(SWINGS.get(0), SwingEvent.IMPACT);
    assertThat(SWINGS.get(0).kind()).isEqualTo(SwingKind.HIT);
    Mark wrong = new Mark(impactS - 1, 2, "practice", "driver", "");
    Swing swing = SwingFinder.withDefaults().find(with(RECORDING.units(), List.of(wrong))).get(0);
    assertThat(swing.kind()).isEqualTo(SwingKind.PRACTICE);
    assertThat(swing.club()).isEqualTo("driver");
    assertThat(swing.flags()).contains("shock-in-practice");
  }

  @Test
  void stretchesDoNotReachIntoTheNextTakeawayNorFartherThanTheyMay() {
    for (int i = 0; i < SWINGS.size(); i++) {
      Swing swing = SWINGS.get(i);
      double takeawayS = timeS(swing, SwingEvent.TAKEAWAY);
      assertThat(takeawayS - swing.startS()).isBetween(0.5, 3.0 + 1e-9);
      assertThat(swing.endS() - timeS(swing, SwingEvent.IMPACT)).isBetween(0.5, 4.0 + 1e-9);
      if (i + 1 < SWINGS.size()) {
        assertThat(swing.endS()).isLessThanOrEqualTo(timeS(SWINGS.get(i + 1), SwingEvent.TAKEAWAY));
      }
    }
  }

  @Test
  void aGapInTheDownswingIsBridgedAndFlagged() {
    // Given: 40 ms of the forearm lost 100 ms before impact. Expect: the same swing, flagged; the
    // impact from the hand, unmoved. Within 3 ms: half a sample of either unit.
    double impactS = timeS(SWINGS.get(0), SwingEvent.IMPACT);
    UnitStream forearm = RECORDING.unit(BodyPoint.LEAD_FOREARM).orElseThrow();
    List<UnitStream> units =
        RECORDING.units().stream()
            .map(u -> u == forearm ? torn(u, impactS - 0.1, impactS - 0.06) : u)
            .toList();
    Swing swing = SwingFinder.withDefaults().find(with(units, List.of())).get(0);
    assertThat(swing.flags()).contains("arm-gap");
    assertThat(timeS(swing, SwingEvent.IMPACT)).isCloseTo(impactS, within(0.003));
  }

  private static UnitStream torn(UnitStream unit, double fromS, double toS) {
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = unit.accelColumnMps2(axis).clone();
      gyro[axis] = unit.gyroColumnRadPerS(axis).clone();
      Arrays.fill(accel[axis], unit.indexAt(fromS), unit.indexAt(toS), Double.NaN);
      Arrays.fill(gyro[axis], unit.indexAt(fromS), unit.indexAt(toS), Double.NaN);
    }
    return new UnitStream(unit.facts(), unit.timeColumnS(), accel, gyro);
  }

  @Test
  void thePelvisAloneGivesEstimatedTopAndNoArmPositions() {
    List<Swing> swings = SwingFinder.withDefaults().find(only(BodyPoint.PELVIS));
    assertThat(swings).hasSize(4);
    for (Swing swing : swings) {
      assertThat(swing.flags()).contains("pelvis-only");
      assertThat(swing.event(SwingEvent.LEAD_ARM_LEVEL_DOWN)).isEmpty();
      EventTime top = swing.event(SwingEvent.TOP).orElseThrow();
      assertThat(top.grade()).isEqualTo(Grade.ESTIMATED);
      assertThat(top.sdS()).isGreaterThan(0.03);
    }
  }

  @Test
  void aForearmAloneGivesThePeakOfTheArmAndWithholdsTheRelease() {
    // Given: no hand unit. Expect: the time of peak arm speed under its own name; the release
    // withheld with the reason, and no other number in its place.
    Recording forearm = only(BodyPoint.LEAD_FOREARM);
    RestBiases biases = RestBiases.of(forearm);
    Swing swing = SwingFinder.withDefaults().find(forearm).get(0);
    WristReading wrist =
        WristReading.of(forearm, biases, swing, WristSteps.NONE, WristClocks.within(0));
    assertThat(wrist.measures()).noneMatch(MeasureValue::given);
    assertThat(wrist.measures())
        .filteredOn(m -> m.measure() == Measure.WRIST_RELEASE)
        .singleElement()
        .satisfies(m -> assertThat(m.why()).isEqualTo(Reason.of(MeasureReason.NEEDS_HAND)));
    assertThat(OrderMeasures.of(forearm, biases, swing, WristAlignment.nominal(), 0))
        .filteredOn(m -> m.measure() == Measure.ARM_PEAK)
        .singleElement()
        .matches(MeasureValue::given);
  }

  @Test
  void ratesCutForLongWithholdTheReleaseAndKeepWhatCameBefore() {
    // Given: the same lesson with gyroscopes that end at 600 deg/s, so that the forearm is cut as
    // well as the hand and neither can help the other. Expect: cock at the top given, release
    // withheld, the flag set.
    SyntheticLesson cut =
        LessonSimulator.simulate(
            LessonSpec.standard().withHits(1).withPractices(0).withGyroFullScaleDegPerS(600), 11);
    RestBiases biases = RestBiases.of(cut.recording());
    Swing swing = SwingFinder.withDefaults().find(cut.recording()).get(0);
    WristReading wrist =
        WristReading.of(cut.recording(), biases, swing, WristSteps.NONE, WristClocks.within(0.001));
    assertThat(wrist.flags()).contains("gyro-beyond-repair");
    assertThat(wrist.measures())
        .filteredOn(m -> m.measure() == Measure.WRIST_COCK && m.at().equals("top"))
        .singleElement()
        .matches(MeasureValue::given);
    assertThat(wrist.measures())
        .filteredOn(m -> m.measure() == Measure.WRIST_RELEASE)
        .singleElement()
        .matches(m -> !m.given());
  }

  @Test
  void peakWristRatesOfTheSimulatedPlayerLieWithinTwoSpreadsOfPublishedOnes() {
    // Given: 1085 +- 338 deg/s of 18 professionals (Zheng et al. 2008). Expect: within 2 SD.
    RestBiases biases = RestBiases.of(RECORDING);
    for (Swing swing : SWINGS) {
      WristReading wrist =
          WristReading.of(RECORDING, biases, swing, WristSteps.NONE, WristClocks.within(0.001));
      assertThat(wrist.measures())
          .filteredOn(m -> m.measure() == Measure.WRIST_RATE)
          .singleElement()
          .satisfies(m -> assertThat(m.value()).isCloseTo(1085, within(2 * 338.0)));
    }
  }
}
