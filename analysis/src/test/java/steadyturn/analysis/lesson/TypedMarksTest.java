package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.wear.StepReason;
import steadyturn.ingest.mark.MarkStretches;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/**
 * A lesson whose marks were typed against the same with the simulator's own stretches. Given in
 * all: three balls with a 7-iron and a practice swing, 200 Hz, all wear steps, seed 11.
 */
class TypedMarksTest {

  private static Recording noted;
  private static LessonResult byStretches;

  @BeforeAll
  static void simulate() {
    LessonSpec spec = LessonSpec.standard().withHits(3).withPractices(1).withRateHz(200);
    noted = LessonSimulator.simulate(spec, 11).recording();
    byStretches = analyze(noted);
  }

  private static LessonResult analyze(Recording recording) {
    return LessonAnalyzer.withDefaults().analyze(List.of(recording)).get(0);
  }

  private static boolean isSwing(Mark mark) {
    return Set.of("hit", "practice").contains(mark.trialType());
  }

  /** Each wear step typed so much late, each swing so long after it was over. */
  private static Recording typed(double stepLateS, double swingLateS, boolean clubApart) {
    List<Mark> marks = new ArrayList<>();
    for (Mark m : noted.marks()) {
      double atS = isSwing(m) ? m.endS() + swingLateS : m.onsetS() + stepLateS;
      marks.add(new Mark(atS, 0, m.trialType(), clubApart ? "" : m.club(), ""));
    }
    double firstS =
        noted.marks().stream().filter(TypedMarksTest::isSwing).findFirst().orElseThrow().onsetS();
    if (clubApart) {
      marks.add(new Mark(firstS - 1, 0, "club", "7-iron", ""));
    }
    return noted.with(MarkStretches.of(marks));
  }

  private static List<String> swings(LessonResult result) {
    return result.swings().stream().map(s -> s.kind() + " " + s.club()).toList();
  }

  private static Set<String> refused(LessonResult result) {
    return result.notices().stream()
        .filter(notice -> notice.reason().code() instanceof StepReason)
        .map(Notice::about)
        .collect(Collectors.toSet());
  }

  @Test
  void aNoteIsOfTheNearestBallAndOneFarAwayOfTheLesson() {
    // Given: words typed 2 s after the second ball, 1 s before the third, 3 s before the first, and
    // 60 s after the last swing, where a hit is typed too. Expect: each with its ball; the far ones
    // said, none lost.
    List<Mark> balls = noted.marks().stream().filter(TypedMarksTest::isSwing).toList();
    double endS = balls.get(balls.size() - 1).endS() + 60;
    List<Mark> marks = new ArrayList<>(noted.marks());
    marks.add(new Mark(balls.get(1).endS() + 2, 0, "note", "", "left heel"));
    marks.add(new Mark(balls.get(2).onsetS() - 1, 0, "note", "", "slower now"));
    marks.add(new Mark(balls.get(0).onsetS() - 3, 0, "note", "", "first"));
    marks.add(new Mark(endS, 0, "note", "", "done"));
    marks.add(new Mark(endS, 0, "hit", "", ""));
    LessonResult result = analyze(noted.with(marks));
    assertThat(result.swings())
        .extracting(SwingResult::note)
        .startsWith("first", "left heel", "slower now");
    assertThat(result.notices())
        .extracting(Notice::reason)
        .contains(Reason.of(MarkReason.FAR, "hit", endS), Reason.of(MarkReason.NOTE, "done", endS));
    assertThat(swings(result)).isEqualTo(swings(byStretches));
  }

  @ParameterizedTest
  @CsvSource({"0,1,false", "0.3,2,false", "-0.5,2.5,true", "-1,3,true"})
  void theSameStepsSwingsClubsAndValues(double stepLateS, double swingLateS, boolean clubApart) {
    // Given: instants typed early or late. Expect: every step used, kinds and clubs as noted,
    // values
    // as from the stretches. Within 1 deg, 8 mm: other samples of a swaying person in each step.
    LessonResult result = analyze(typed(stepLateS, swingLateS, clubApart));
    assertThat(refused(byStretches)).isEmpty();
    assertThat(refused(result)).isEmpty();
    assertThat(swings(result)).isEqualTo(swings(byStretches));
    for (int i = 0; i < result.swings().size(); i++) {
      for (Measure measure : List.of(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE)) {
        double is = value(result.swings().get(i), measure);
        double was = value(byStretches.swings().get(i), measure);
        assertThat(is)
            .as("%s", measure)
            .isCloseTo(was, within(measure == Measure.PELVIS_TURN ? 1.0 : 8.0));
      }
    }
  }

  private static double value(SwingResult swing, Measure measure) {
    return swing.measure(measure, SwingEvent.TOP.word()).orElseThrow().value();
  }

  @Test
  void aClubHoldsForTheRunsThatFollow() {
    // Given: a first run in which a club is named and nothing else, then the lesson without clubs.
    Recording first =
        new Recording(
            "first", noted.player(), noted.units(), List.of(new Mark(0, 0, "club", "7 wood", "")));
    List<Mark> without =
        noted.marks().stream()
            .map(m -> new Mark(m.onsetS(), m.durationS(), m.trialType(), "", ""))
            .toList();
    List<LessonResult> results =
        LessonAnalyzer.withDefaults().analyze(List.of(first, noted.with(without)));
    assertThat(results.get(1).swings()).hasSize(4).allMatch(s -> s.club().equals("7 wood"));
  }

  @Test
  void aStepNobodyDidIsRefusedAndNotTakenFromTheAddress() {
    // Given: the quiet stance typed once more just before the first ball, and never done. Expect:
    // it
    // is said to be missing; the address, five seconds before the takeaway, is not taken for it.
    double addressS = byStretches.swings().get(0).timeS(SwingEvent.TAKEAWAY) - 5.2;
    Stream<Mark> more = Stream.of(new Mark(addressS, 0, "quiet-stance", "", ""));
    LessonResult result =
        analyze(noted.with(MarkStretches.of(Stream.concat(noted.marks().stream(), more).toList())));
    assertThat(refused(result)).containsExactly("quiet-stance");
  }

  @Test
  void aNoteFarFromEverySwingSpeaksOfNone() {
    double endS = noted.units().get(0).timeS(noted.units().get(0).size() - 1);
    Mark far = new Mark(endS + 60, 0, "practice", "driver", "");
    LessonResult result = analyze(noted.with(List.of(far)));
    assertThat(result.swings()).allMatch(s -> s.club().isEmpty());
    assertThat(result.swings().stream().filter(s -> s.kind() == SwingKind.HIT)).hasSize(3);
  }
}
