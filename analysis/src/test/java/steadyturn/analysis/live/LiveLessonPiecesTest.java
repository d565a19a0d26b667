package steadyturn.analysis.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Which pieces of a lesson are looked at, with what marks, and what is let go. Given in all: a
 * still pelvis unit at 20 Hz from 100 s on the lesson's axis; our own choices: a piece is cut after
 * 30 s, 10 s of it are kept for the next.
 */
class LiveLessonPiecesTest {

  private final List<Recording> pieces = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private final LiveLesson lesson =
      new LiveLesson(
          "made",
          Player.unmeasured("p", Handedness.RIGHT),
          piece -> {
            pieces.add(piece);
            return piece;
          },
          new LiveEvents() {
            @Override
            public void measured(SwingResult swing, double afterS) {
              throw new AssertionError("there is no swing");
            }

            @Override
            public void noticed(Notice notice) {
              notices.add(notice);
            }
          },
          Runnable::run);
  private int next;

  LiveLessonPiecesTest() {
    lesson.unit(UnitFacts.plain(BodyPoint.PELVIS, 20), 100);
  }

  /** Samples up to before an instant, turning at a rate about x. */
  private void feed(double untilS, double degPerS) {
    for (; 100 + 0.05 * next < untilS - 1e-6; next++) {
      lesson.sample(
          BodyPoint.PELVIS,
          0.05 * next,
          new double[] {9.81, 0, 0},
          new double[] {Math.toRadians(degPerS), 0, 0});
    }
  }

  private void mark(double atS, String word) {
    lesson.mark(new Mark(atS, 0, word, "", ""));
  }

  private double firstKeptS() {
    Recording kept = lesson.samples().between(-1e9, 1e9, List.of());
    pieces.remove(pieces.size() - 1);
    return kept.units().get(0).timeS(0);
  }

  private static UnitStream of(Recording piece) {
    return piece.units().get(0);
  }

  private List<String> words(int piece) {
    return pieces.get(piece).marks().stream().map(Mark::trialType).toList();
  }

  @Test
  void withoutASwingAPieceIsCutAfterHalfAMinuteAndTenSecondsAreKept() {
    feed(130.04, 0);
    assertThat(pieces).isEmpty();
    feed(130.09, 0);
    assertThat(pieces).hasSize(1);
    assertThat(of(pieces.get(0)).size()).isEqualTo(602);
    assertThat(firstKeptS()).isCloseTo(120.05, within(0.051));
    feed(160.2, 0);
    assertThat(pieces).hasSize(2);
    assertThat(of(pieces.get(1)).timeS(0)).isCloseTo(120.05, within(0.051));
    assertThat(notices).isEmpty();
  }

  @Test
  void aStepUnderWayIsNeitherCutNorLetGo() {
    // Given: a step begun at 125 s, ended at 150 s. Expect: cut at once then, with the whole step.
    feed(125, 0);
    mark(125, "quiet-stance");
    feed(150, 0);
    assertThat(pieces).isEmpty();
    mark(150, "done");
    feed(150.1, 0);
    assertThat(pieces).hasSize(1);
    assertThat(words(0)).containsExactly("quiet-stance", "done");
    assertThat(of(pieces.get(0)).timeS(0)).isEqualTo(100);
    assertThat(firstKeptS()).isCloseTo(140.05, within(0.051));
  }

  @Test
  void aMarkTakenBackIsInNoPieceAndTheClubBeforeItHolds() {
    // Given: a club, another one 5 s later that was meant otherwise, and a hit taken back. Expect:
    // from the second on the first club again, no hit.
    feed(105, 0);
    lesson.mark(new Mark(105, 0, "club", "7-iron", ""));
    Mark wrong = new Mark(110, 0, "club", "driver", "");
    lesson.mark(wrong);
    Mark hit = new Mark(112, 0, "hit", "", "");
    lesson.mark(hit);
    lesson.unmark(wrong);
    lesson.unmark(hit);
    feed(130.1, 0);
    assertThat(pieces.get(0).marks())
        .containsExactly(
            new Mark(105, 0, "club", "7-iron", ""), new Mark(110, 0, "club", "7-iron", ""));
  }

  @Test
  void aFastMomentInsideAStepLeavesTheStepAndTenSecondsBeforeIt() {
    // Given: a turn at 200 deg/s from 130 to 130.5 s in a step begun at 125 s. Expect: held after
    // the sway of 0.1 s has died down (0.46 s) and 0.8 s; over 4.5 s after it; the step, still
    // under way, in neither piece; all from 115 s on is kept.
    feed(125, 0);
    mark(125, "turn-on-spot");
    feed(130, 0);
    feed(130.5, 200);
    feed(140, 0);
    assertThat(pieces).hasSize(2);
    assertThat(lastS(0)).isCloseTo(130.45 + 0.46 + 0.8, within(0.11));
    assertThat(lastS(1)).isCloseTo(130.45 + 4.5, within(0.11));
    assertThat(words(0)).isEmpty();
    assertThat(words(1)).isEmpty();
    assertThat(firstKeptS()).isCloseTo(115, within(0.051));
    mark(141, "done");
    feed(171, 0);
    assertThat(words(2)).containsExactly("turn-on-spot", "done");
  }

  private double lastS(int piece) {
    UnitStream unit = of(pieces.get(piece));
    return unit.timeS(unit.size() - 1);
  }

  @Test
  void aStepThatWasFoundStandsForTheOneThatWasBegun() {
    feed(104, 0);
    mark(101, "aim");
    mark(103, "bow");
    mark(109, "bow");
    mark(112, "done");
    lesson.found(new Mark(104, 2, "bow", "", ""));
    feed(131, 0);
    assertThat(pieces).hasSize(1);
    assertThat(pieces.get(0).marks())
        .containsExactly(
            new Mark(101, 0, "aim", "", "").openFor(3),
            new Mark(104, 2, "bow", "", ""),
            new Mark(109, 0, "bow", "", "").openFor(3),
            new Mark(112, 0, "done", "", ""));
  }

  @Test
  void aNoteWaitsForItsSwingAndIsSaidToBelongToNone() {
    // Given: a hit noted at 110 s, a club at 111 s; no swing within 15 s. Expect: said once, when
    // no later piece, which keeps 10 s, can hold a swing for it: after 135 s; never of the club.
    feed(110, 0);
    mark(110, "hit");
    mark(111, "club");
    feed(131, 0);
    assertThat(words(0)).containsExactly("hit", "club");
    assertThat(notices).isEmpty();
    feed(161, 0);
    assertThat(words(1)).containsExactly("hit");
    assertThat(notices)
        .singleElement()
        .satisfies(notice -> assertThat(notice.reason().code()).isEqualTo(MarkReason.FAR));
    feed(192, 0);
    assertThat(words(2)).isEmpty();
    assertThat(notices).hasSize(1);
  }

  @Test
  void theEndSaysWhatIsLeft() {
    feed(110, 0);
    mark(109, "practice");
    lesson.close();
    assertThat(pieces).hasSize(1);
    assertThat(of(pieces.get(0)).size()).isEqualTo(200);
    assertThat(notices).hasSize(1);
  }

  @Test
  void aLessonWithoutASampleEndsInSilence() {
    lesson.close();
    assertThat(pieces).isEmpty();
  }

  @Test
  void whatWasRecordedBeforeIsReadByTheWorker() {
    // Given: two earlier recordings of the lesson. Expect: each asked for once.
    List<Recording> asked = new ArrayList<>();
    Recording earlier =
        new Recording("before", Player.unmeasured("p", Handedness.RIGHT), List.of(), List.of());
    lesson.before(() -> List.of(earlier, earlier).stream().peek(asked::add).iterator());
    assertThat(asked).hasSize(2);
    assertThat(notices).isEmpty();
  }
}
