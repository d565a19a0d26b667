package steadyturn.analysis.coach.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.body.Variation;
import steadyturn.analysis.lab.study.ErrorTally;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/**
 * Half swings of simulated players, against their truth; {@code -Dsteadyturn.coach.lessons=12} runs
 * the study of docs/how-to/teach-your-way.md.
 */
class HalfSwingsTest {

  private static final int LESSONS = Integer.getInteger("steadyturn.coach.lessons", 4);
  private static final long SEED = Long.getLong("steadyturn.coach.seed", 301);

  private static final MeasureAt KEPT =
      new MeasureAt(Measure.WRIST_KEPT, SwingEvent.LEAD_ARM_LEVEL_DOWN.word());
  private static final MeasureAt RATIO = new MeasureAt(Measure.TEMPO_RATIO, "");

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void halfSwingsAreFoundBetweenWagglesAndSteps(Handedness handed) {
    // Given: a stretch with six half swings of a second and a half back and 0.8 s down, two waggles
    // before each, steps between them. Expect: six, none of them a full swing.
    SyntheticLesson lesson = lesson(-115, 400, handed, 301);
    assertThat(LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0).swings())
        .isEmpty();
    assertThat(rehearsals(lesson)).hasSize(6);
  }

  @Test
  void walkingFromBallToBallIsNoRehearsal() {
    // Given: simulated lessons of ten swings, all of each marked as a drill; the player walks
    // to
    // every ball and turns round by 70 deg and more. Expect: nothing but the swings themselves.
    for (long seed = 5001; seed <= 5000 + LESSONS; seed++) {
      System.err.println("seed " + seed);
      SyntheticLesson lesson =
          LessonSimulator.simulate(LessonSpec.standard().withHits(8).withRateHz(100), seed);
      Recording recording = marked(lesson);
      for (Rehearsal each :
          Rehearsal.together(SlowTurns.of(recording), new HalfSwings().of(recording))) {
        assertThat(lesson.truth().swings())
            .anyMatch(s -> Math.abs(s.eventS(SwingEvent.TOP).orElseThrow() - each.timeS()) < 2);
      }
    }
  }

  @Test
  void theTurnOnTheSpotOfAWornUnitIsARehearsal() {
    // Given: the wear step "turn on the spot" of a simulated lesson (twice 35 deg to each side,
    // feet
    // still, with sway, wobble and skin shift), marked as a drill too. Expect: its two turns away
    // from the target, none lost to the search for steps.
    SyntheticLesson lesson = LessonSimulator.simulate(LessonSpec.standard().withRateHz(100), 5003);
    Recording r = lesson.recording();
    Mark step =
        r.marks().stream().filter(m -> m.trialType().equals("turn-on-spot")).findFirst().get();
    List<Mark> marks = new ArrayList<>(r.marks());
    marks.add(
        new Mark(
            step.onsetS() - 0.5,
            step.durationS() + 1,
            MarkWord.DRILL_REP.word(),
            "",
            "club-across-hips"));
    assertThat(SlowTurns.of(new Recording(r.id(), r.player(), r.units(), marks))).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource({"-105, 350", "-105, 780", "-140, 350", "-140, 780"})
  void theCockKeptAndTheTempoLieInTheirRangesAndNearTheTruth(double topDeg, double releaseMs) {
    // Given: six half swings a lesson, just past level or nearly to the top, by wrists that keep
    // the
    // angle or lose it early. Expect: every swing found; kept within 5 points and the ratio within
    // 0.25 RMS (about one and a half times what 288 such swings gave); at least nine tenths of the
    // ranges hold the truth.
    ErrorTally kept = new ErrorTally();
    ErrorTally ratio = new ErrorTally();
    for (long seed = SEED; seed < SEED + LESSONS; seed++) {
      SyntheticLesson lesson = lesson(topDeg, releaseMs, Handedness.RIGHT, seed);
      List<Rehearsal> found = rehearsals(lesson);
      assertThat(found).hasSameSizeAs(lesson.truth().swings());
      for (int i = 0; i < found.size(); i++) {
        add(kept, KEPT, found.get(i), lesson.truth().swings().get(i));
        add(ratio, RATIO, found.get(i), lesson.truth().swings().get(i));
      }
    }
    System.err.println(kept.row("half swings", "kept", "%", 5));
    System.err.println(ratio.row("half swings", "ratio", "1", 0.25));
    assertThat(kept.n()).isGreaterThan(3 * LESSONS);
    assertThat(kept.rmse()).isLessThan(5);
    assertThat(ratio.rmse()).isLessThan(0.25);
    assertThat(kept.coveragePct()).isGreaterThanOrEqualTo(90);
    assertThat(ratio.coveragePct()).isGreaterThanOrEqualTo(90);
  }

  private static void add(ErrorTally tally, MeasureAt what, Rehearsal found, SwingTruth truth) {
    Optional<MeasureValue> given = found.measure(what);
    if (given.isPresent()) { // an arm that hardly rose past level has no crossing of it
      MeasureValue value = given.get();
      assertThat(value.grade()).isEqualTo(Grade.ESTIMATED);
      double expected = truth.truth(what.measure(), what.at()).orElseThrow().value();
      tally.add(value.value(), value.low(), value.high(), expected);
    }
  }

  @Test
  void aStretchOfHalfSwingsIsScoredByTheGoalOfItsDrill() {
    // Given: six half swings that keep their angle, marked as the drill "hands apart" with the goal
    // 85 to 115 % kept. Expect: six in the goal.
    SyntheticLesson lesson = lesson(-140, 350, Handedness.RIGHT, 304);
    DrillScore score =
        DrillScore.of(
                TeachingReader.shipped(),
                marked(lesson).marks(),
                List.of(),
                Rehearsal.together(List.of(), rehearsals(lesson)))
            .get(0);
    assertThat(score.inBand()).isEqualTo(6);
    assertThat(score.longestRun()).isEqualTo(6);
  }

  @Test
  void aTurnAndAHalfSwingAtOnceAreOneRehearsalWithBoth() {
    var turn = MeasureValue.of(Measure.PELVIS_TURN, "top", -45, 1, Grade.ESTIMATED, Reason.NONE);
    var kept = MeasureValue.of(KEPT.measure(), KEPT.at(), 95, 2, Grade.ESTIMATED, Reason.NONE);
    List<Rehearsal> all =
        Rehearsal.together(
            List.of(new Rehearsal(10, List.of(turn)), new Rehearsal(20, List.of(turn))),
            List.of(new Rehearsal(10.4, List.of(kept))));
    assertThat(all).hasSize(2);
    assertThat(all.get(0).measures()).containsExactly(kept, turn);
  }

  private static List<Rehearsal> rehearsals(SyntheticLesson lesson) {
    return new HalfSwings().of(marked(lesson));
  }

  /** The same recording with one stretch of a drill over all its swings. */
  private static Recording marked(SyntheticLesson lesson) {
    Recording r = lesson.recording();
    double fromS = lesson.truth().swings().get(0).eventS(SwingEvent.TAKEAWAY).orElseThrow() - 2;
    double toS =
        lesson
                .truth()
                .swings()
                .get(lesson.truth().swings().size() - 1)
                .eventS(SwingEvent.IMPACT)
                .orElseThrow()
            + 3;
    List<Mark> marks = new ArrayList<>(r.marks());
    marks.add(new Mark(fromS, toS - fromS, MarkWord.DRILL_REP.word(), "", "apart-hands"));
    return new Recording(r.id(), r.player(), r.units(), marks);
  }

  private static SyntheticLesson lesson(
      double topDeg, double releaseMs, Handedness handed, long seed) {
    PlayerStyle style =
        PlayerStyle.steadyTurner()
            .with(Trait.ARM_TOP_DEG, Variation.about(topDeg, 3, 3))
            .with(Trait.ARM_FINISH_DEG, Variation.about(95, 3, 3))
            .with(Trait.BACK_S, Variation.about(1.5, 0.1, 0.08))
            .with(Trait.DOWN_S, Variation.about(0.8, 0.05, 0.05))
            .with(Trait.RELEASE_START_MS, Variation.about(releaseMs, 20, 20))
            .with(Trait.RELEASE_LENGTH_MS, Variation.about(releaseMs, 20, 20));
    LessonSpec spec =
        LessonSpec.standard()
            .withPlayer(style)
            .withHanded(handed)
            .withHits(0)
            .withPractices(6)
            .withRateHz(200);
    System.err.println("seed " + seed);
    return LessonSimulator.simulate(spec, seed);
  }
}
