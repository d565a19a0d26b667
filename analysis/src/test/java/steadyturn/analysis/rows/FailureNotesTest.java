package steadyturn.analysis.rows;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;

/** What stands in the cells of failures, numbers and reasons. */
final class FailureNotesTest {

  private static final String RUN = "sub-mika_ses-a_task-golf_run-2";
  private static final String OTHER = "sub-mika_ses-a_task-golf_run-21";

  /** Reasons with arguments. */
  private enum TrialReason implements ReasonCode {
    PLAIN,
    FULL;

    @Override
    public List<String> args() {
      return this == PLAIN ? List.of() : List.of("point", "leastDeg", "swings");
    }
  }

  /** Notes what passes. */
  private static final class Behind implements ReadingWatch {

    private final List<String> passed = new ArrayList<>();

    @Override
    public boolean tried(Attempt attempt) {
      try {
        attempt.run();
        return true;
      } catch (Exception e) {
        passed.add("tried " + e.getMessage());
        return false;
      }
    }

    @Override
    public void failed(Exception failure) {
      passed.add("failed " + failure.getMessage());
    }

    @Override
    public void warn(String sentence) {
      passed.add("warned " + sentence);
    }
  }

  private static void fail(FailureNotes notes, String message) {
    notes.failed(new IllegalStateException(message));
  }

  @Test
  void whatFailsIsNotedAndStillReachesWhoWatches() {
    Behind behind = new Behind();
    FailureNotes notes = new FailureNotes(behind);
    assertThat(notes.tried(() -> {})).isTrue();
    boolean went =
        notes.tried(
            () -> {
              throw new IllegalStateException("torn");
            });
    fail(notes, "late");
    notes.warn("slow");
    assertThat(went).isFalse();
    assertThat(behind.passed).containsExactly("tried torn", "failed late", "warned slow");
    assertThat(notes.of(RUN, true)).isEqualTo("torn | late");
  }

  @Test
  void aFailureStandsInTheRowOfItsRunAlone() {
    // Given: a table's name has the tracking system before the run (BIDS motion), and run 21
    // begins as run 2 does. Expect: each its own; one that names none where there is no result
    FailureNotes notes = new FailureNotes(new Behind());
    fail(notes, RUN.replace("_run", "_tracksys-pelvis_run") + "_motion.tsv: line 7\n  has no z");
    fail(notes, OTHER + "_events.tsv: torn");
    fail(notes, "disk full");
    assertThat(notes.of(RUN, false)).contains("line 7 has no z").doesNotContain("torn", "disk");
    assertThat(notes.of(OTHER, true)).isEqualTo(OTHER + "_events.tsv: torn");
    assertThat(notes.of("sub-mika_ses-a_task-golf_run-3", false)).isEmpty();
    assertThat(notes.of("sub-mika_ses-a_task-golf_run-3", true)).contains("disk full", "torn");
    assertThat(new FailureNotes(new Behind()).of(RUN, true)).isEqualTo("no result");
  }

  @Test
  void theSameFailureIsToldOnceAndOneWithoutWordsByItsKind() {
    FailureNotes notes = new FailureNotes(new Behind());
    fail(notes, RUN + " torn");
    fail(notes, RUN + " torn");
    assertThat(notes.of(RUN, true)).isEqualTo(RUN + " torn");
    assertThat(FailureNotes.text(new IllegalStateException(" ")))
        .isEqualTo("IllegalStateException");
    assertThat(FailureNotes.text(new IllegalStateException((String) null)))
        .isEqualTo("IllegalStateException");
  }

  @Test
  void numbersAreRoundedAsPrintedAndWithheldOnesAreEmpty() {
    assertThat(LessonRows.number(2.34567, 2)).hasToString("2.35");
    assertThat(LessonRows.number(Double.NaN, 2)).isEqualTo("");
    assertThat(LessonRows.number(Double.POSITIVE_INFINITY, 2)).isEqualTo("");
  }

  @Test
  void aReasonsArgumentsReadAsNamesAndValues() {
    Reason full = Reason.of(TrialReason.FULL, BodyPoint.LEAD_HAND, 15.04, 3);
    assertThat(LessonRows.args(Reason.NONE)).isEmpty();
    assertThat(LessonRows.args(full)).isEqualTo("point=lead_hand; leastDeg=15.04; swings=3");
    assertThat(LessonRows.args(full.and(Reason.of(TrialReason.PLAIN))))
        .isEqualTo("point=lead_hand; leastDeg=15.04; swings=3; also=trial.plain");
    assertThat(LessonRows.args(Reason.of(TrialReason.PLAIN).and(full)))
        .isEqualTo("also=trial.full (point=lead_hand; leastDeg=15.04; swings=3)");
    assertThat(LessonRows.args(Reason.of(TrialReason.FULL, "", Double.NaN, 1L)))
        .isEqualTo("point=; leastDeg=NaN; swings=1");
  }
}
