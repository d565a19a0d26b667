package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.BodyPoint;

/** What a unit on the club shaft adds to, or puts in place of, the one on the hand. Seed 21. */
class WristFromShaftTest {

  private static final Set<BodyPoint> NO_HAND =
      EnumSet.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.CLUB_SHAFT);
  private static final Set<BodyPoint> ALL =
      EnumSet.of(
          BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, BodyPoint.CLUB_SHAFT);

  private static SyntheticLesson lesson(Set<BodyPoint> units, BodyErrors body) {
    LessonSpec spec =
        LessonSpec.standard()
            .withHits(6)
            .withPractices(0)
            .withWaggles(0)
            .withWalking(false)
            .withUnits(units)
            .withBody(body);
    return LessonSimulator.simulate(spec, 21);
  }

  private static List<SwingResult> swings(SyntheticLesson lesson) {
    return LessonAnalyzer.withDefaults().analyze(List.of(lesson.recording())).get(0).swings();
  }

  @Test
  void withoutAHandUnitForearmAndShaftGiveTheReleaseAndSaySo() {
    // Given: 6 hits, shaft turning in the grip by 1.5 deg. Expect: every release given, estimated,
    // with its source named; error within the half-width of a 99.9 % interval (1.68 of a 95 % one).
    SyntheticLesson lesson = lesson(NO_HAND, BodyErrors.standard());
    List<SwingResult> swings = swings(lesson);
    assertThat(swings).hasSize(6);
    for (int i = 0; i < 6; i++) {
      MeasureValue release = swings.get(i).measure(Measure.WRIST_RELEASE, "").orElseThrow();
      double truth =
          lesson
              .truth()
              .swings()
              .get(i)
              .truth(Measure.WRIST_RELEASE, "")
              .map(TrueMeasure::value)
              .orElseThrow();
      assertThat(release.grade()).isEqualTo(Grade.ESTIMATED);
      assertThat(release.why().code()).isEqualTo(MeasureReason.WRIST_FROM_SHAFT);
      assertThat(swings.get(i).flags()).contains("wrist-from-shaft");
      double half = (release.high() - release.low()) / 2;
      assertThat(Math.abs(release.value() - truth)).as("swing " + (i + 1)).isLessThan(1.68 * half);
    }
  }

  @Test
  void aShaftBesideAGoodHandUnitChangesNothing() {
    // Given: hand and shaft units, grip and skin of usual size. Expect: no flag, hand's grades.
    for (SwingResult swing : swings(lesson(ALL, BodyErrors.standard()))) {
      assertThat(swing.flags()).doesNotContain("hand-moves-on-shaft", "wrist-from-shaft");
      assertThat(swing.measure(Measure.WRIST_RELEASE, "").orElseThrow().grade())
          .isEqualTo(Grade.MEASURED);
    }
  }

  @Test
  void aHandThatTurnsOnTheShaftIsFlaggedAndItsIntervalsReachTheShaftsAngle() {
    // Given: the same swings with a shaft that turns in the hand by 12 deg (spread about each
    // axis). Expect: most swings flagged, and their cock at the top known less well than without.
    List<SwingResult> firm = swings(lesson(ALL, BodyErrors.standard()));
    List<SwingResult> loose = swings(lesson(ALL, BodyErrors.standard().grip(12)));
    int flagged = 0;
    for (int i = 0; i < loose.size(); i++) {
      boolean moves = loose.get(i).flags().contains("hand-moves-on-shaft");
      flagged += moves ? 1 : 0;
      double wide = width(loose.get(i));
      assertThat(wide).isGreaterThanOrEqualTo(width(firm.get(i)) - 0.01);
    }
    assertThat(flagged).isGreaterThanOrEqualTo(4);
  }

  private static double width(SwingResult swing) {
    MeasureValue cock = swing.measure(Measure.WRIST_COCK, "top").orElseThrow();
    return cock.high() - cock.low();
  }
}
