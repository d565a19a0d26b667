package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.body.Variation;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

class LessonAnalyzerTest {

  private static LessonSpec spec(int hits) {
    return LessonSpec.standard().withHits(hits).withPractices(0).withWaggles(0).withWalking(false);
  }

  private static LessonSpec exact(PlayerStyle player) {
    // a practice swing: the ring of a struck ball is sampled too coarsely to be free of error
    return spec(0)
        .withPractices(1)
        .withBody(BodyErrors.none())
        .withUnitGrade(UnitGrade.PERFECT)
        .withLossPct(0)
        .withJitterS(0)
        .withPlayer(player);
  }

  private static LessonResult analyze(LessonSpec spec, long seed) {
    SyntheticLesson lesson = LessonSimulator.simulate(spec, seed);
    return LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0);
  }

  private static double value(SwingResult swing, Measure measure, String at) {
    return swing.measure(measure, at).orElseThrow().value();
  }

  /** A player whose pelvis does exactly this at the top and at impact, and nothing else. */
  private static PlayerStyle only(
      double turnTop, double turnImpact, double slideTop, double slideImpact) {
    PlayerStyle player = PlayerStyle.mixed().withoutSpread();
    for (Trait trait : Trait.values()) {
      String name = trait.name();
      if (name.startsWith("THRUST")
          || name.startsWith("LIFT")
          || name.startsWith("SIDE_TILT_")
          || name.startsWith("TILT_TOP")
          || name.startsWith("TILT_IMPACT")
          || name.startsWith("TILT_FINISH")
          || name.equals("SLIDE_THROUGH_MM")) {
        player = player.withFixed(trait, 0);
      }
    }
    return player
        .withFixed(Trait.TURN_TOP_DEG, turnTop)
        .withFixed(Trait.TURN_IMPACT_DEG, turnImpact)
        .withFixed(Trait.SLIDE_TOP_MM, slideTop)
        .withFixed(Trait.SLIDE_IMPACT_MM, slideImpact);
  }

  @Test
  void aPureTurnIsNoSlideAndTurnsAboutMidHip() {
    // Given: the pelvis turns -45 and +40 deg about mid-hip, perfect unit, seed 5. Expect: slide 0
    // and centre (0, 0).
    // Within 3 mm: sway the estimate allows for though there is none; without the lever arm slide
    // would read -77 mm.
    SwingResult swing = analyze(exact(only(-45, 40, 0, 0)), 5).swings().get(0);
    for (String at : List.of("top", "impact")) {
      assertThat(value(swing, Measure.PELVIS_SLIDE, at))
          .as("slide " + at)
          .isCloseTo(0, within(3.0));
      assertThat(value(swing, Measure.PELVIS_CENTRE_ALONG, at))
          .as("along " + at)
          .isCloseTo(0, within(3.0));
      assertThat(value(swing, Measure.PELVIS_CENTRE_ACROSS, at))
          .as("across " + at)
          .isCloseTo(0, within(3.0));
    }
    assertThat(value(swing, Measure.PELVIS_TURN, "pelvis-turnaround")).isCloseTo(-45, within(1.0));
  }

  @Test
  void aPureSlideIsNoTurn() {
    // Given: the pelvis slides -60 and +100 mm without turning until impact, perfect unit, seed 5.
    // Expect: turn 0 at the top and the slide of the truth there (a little less than -60, as the
    // pelvis is on its way back by then); ratio and centre are withheld with a reason. Within 0.3
    // deg, 3 mm: exact samples, but sway is allowed for.
    SyntheticLesson lesson = LessonSimulator.simulate(exact(only(0, 0, -60, 100)), 5);
    SwingResult swing =
        LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0).swings().get(0);
    SwingTruth truth = lesson.truth().swings().get(0);
    double truthMm = 1e3 * truth.at(truth.eventS(SwingEvent.TOP).orElseThrow()).slideM();
    assertThat(truthMm).isBetween(-60.0, -45.0);
    assertThat(value(swing, Measure.PELVIS_TURN, "top")).isCloseTo(0, within(0.3));
    assertThat(value(swing, Measure.PELVIS_SLIDE, "top")).isCloseTo(truthMm, within(3.0));
    for (Measure withheld : List.of(Measure.PELVIS_SLIDE_PER_TURN, Measure.PELVIS_CENTRE_ALONG)) {
      MeasureValue value = swing.measure(withheld, "top").orElseThrow();
      assertThat(value.grade()).isEqualTo(Grade.WITHHELD);
      assertThat(value.why().code())
          .isIn(MeasureReason.LITTLE_TURN_FOR_RATIO, MeasureReason.LITTLE_TURN_FOR_CENTRE);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {100, 500})
  void aPositionBetweenTwoSamplesIsReadWhereItLies(double rateHz) {
    // Given: a swing seen by perfect units, seed 5; the pelvis turns by 4 deg and more from sample
    // to sample of a 100 Hz unit on its way down. Expect: the turn of the truth at the very instant
    // at which units are taken to show what is named (they lag by skin and filter, these do not).
    // Within 0.15 deg: sway the estimate allows for, and the bend of the turn
    // over half a sample.
    SyntheticLesson lesson =
        LessonSimulator.simulate(exact(PlayerStyle.mixed()).withRateHz(rateHz), 5);
    SwingResult swing =
        LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0).swings().get(0);
    SwingTruth truth = lesson.truth().swings().get(0);
    for (SwingEvent at :
        List.of(
            SwingEvent.LEAD_ARM_LEVEL_BACK, SwingEvent.LEAD_ARM_LEVEL_DOWN, SwingEvent.IMPACT)) {
      double shownS =
          swing.events().stream().filter(e -> e.event() == at).findFirst().orElseThrow().shownS();
      assertThat(value(swing, Measure.PELVIS_TURN, at.word()))
          .as(at.word())
          .isCloseTo(Math.toDegrees(truth.at(shownS).turnRad()), within(0.15));
    }
  }

  @Test
  void aMirroredPlayerGivesTheSameNumbers() {
    // Given: the same exact lesson right- and left-handed (mirror image in the plane of the target
    // line), seed 11.
    // Expect: every pelvis value identical. Within 1e-9: rounding of mirrored arithmetic only.
    LessonSpec right = spec(2).withUnitGrade(UnitGrade.PERFECT).withBody(BodyErrors.none());
    LessonResult a = analyze(right, 11);
    LessonResult b = analyze(right.withHanded(Handedness.LEFT), 11);
    assertThat(b.swings()).hasSameSizeAs(a.swings());
    for (int i = 0; i < a.swings().size(); i++) {
      for (MeasureValue value : a.swings().get(i).measures()) {
        if (value.given() && value.measure().id().startsWith("pelvis.")) {
          assertThat(value(b.swings().get(i), value.measure(), value.at()))
              .as(value.measure().id() + " @ " + value.at())
              .isCloseTo(value.value(), within(1e-9 * Math.max(1, Math.abs(value.value()))));
        }
      }
    }
  }

  @Test
  void aDriftingAddressIsFlaggedAndNotBelieved() {
    // Given: bodies drifting at 9 cm/s through the address, seeds 1..4, and the same lessons
    // standing still. Expect:
    // all drifting swings flagged and estimated, none of the still ones.
    for (long seed = 1; seed <= 4; seed++) {
      SwingResult drifting = analyze(spec(1).withAddressDriftMps(0.09), seed).swings().get(0);
      assertThat(drifting.flags()).as("seed " + seed).contains("address-not-still");
      assertThat(drifting.measure(Measure.PELVIS_SLIDE, "impact").orElseThrow().grade())
          .isEqualTo(Grade.ESTIMATED);
      SwingResult still = analyze(spec(1), seed).swings().get(0);
      assertThat(still.flags()).as("seed " + seed).doesNotContain("address-not-still");
    }
  }

  @Test
  void aWiderUnknownWidensTheInterval() {
    // Given: the same lesson with and without wear steps, seed 3. Expect: the slide's interval is
    // wider without them.
    double with = width(analyze(spec(1), 3));
    double without = width(analyze(spec(1).withWearSteps(Set.of()), 3));
    assertThat(without).isGreaterThan(with);
  }

  private static double width(LessonResult result) {
    MeasureValue slide =
        result.swings().get(0).measure(Measure.PELVIS_SLIDE, "impact").orElseThrow();
    return slide.high() - slide.low();
  }

  @Test
  void withoutAPelvisUnitThePelvisIsWithheldWithTheReason() {
    // Given: forearm and hand only, seed 2. Expect: turn withheld, release given.
    LessonResult result =
        analyze(spec(1).withUnits(Set.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND)), 2);
    SwingResult swing = result.swings().get(0);
    MeasureValue turn = swing.measure(Measure.PELVIS_TURN, "").orElseThrow();
    assertThat(turn.grade()).isEqualTo(Grade.WITHHELD);
    assertThat(turn.why()).isEqualTo(Reason.of(MeasureReason.NEEDS_PELVIS));
    assertThat(swing.measure(Measure.WRIST_RELEASE, "").orElseThrow().given()).isTrue();
  }

  @Test
  void aPelvisUnitAloneGivesTurnAndSlide() {
    // Given: pelvis only, seed 2. Expect: the swing is found, turn at the top within 6 deg of the
    // truth (the top itself
    // is then an estimate), and the release withheld.
    LessonSpec alone = spec(1).withUnits(Set.of(BodyPoint.PELVIS));
    SyntheticLesson lesson = LessonSimulator.simulate(alone, 2);
    SwingResult swing =
        LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0).swings().get(0);
    double truthDeg =
        Math.toDegrees(
            lesson
                .truth()
                .swings()
                .get(0)
                .at(lesson.truth().swings().get(0).eventS(SwingEvent.TOP).orElseThrow())
                .turnRad());
    assertThat(value(swing, Measure.PELVIS_TURN, "top")).isCloseTo(truthDeg, within(6.0));
    assertThat(swing.measure(Measure.WRIST_RELEASE, "").orElseThrow().given()).isFalse();
  }

  @Test
  void aSpreadOfTraitsIsWhatTheTestAsksFor() {
    // Given: a fixed trait. Expect: no spread left, so that the tests above mean what they say.
    Variation turn = only(-45, 40, 0, 0).spread(Trait.TURN_TOP_DEG);
    assertThat(turn.mean()).isEqualTo(-45);
  }
}
