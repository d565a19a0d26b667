package steadyturn.analysis.swing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;

/**
 * Marks beside swings, and beside none. Given in all: a swing that begins at 100 s and is over at
 * 103 s; a note is about a swing within 15 s (our choice).
 */
class UnplacedMarksTest {

  private static final Swing SWING =
      new Swing(1, SwingKind.HIT, "", 97, 106, List.of(), List.of(), List.of(mark("hit", 120)));

  private final UnplacedMarks marks = new UnplacedMarks();

  private static Mark mark(String word, double atS) {
    return new Mark(atS, 0, word, "", word.equals("note") ? "left heel" : "");
  }

  private List<Reason> after(Mark mark, double seenToS) {
    marks.read(List.of(mark), List.of(SWING));
    return marks.take(seenToS);
  }

  @Test
  void aMarkFartherThanFifteenSecondsIsToldOnce() {
    // the stretch of the swing, 97 to 106 s, stands in where its events were not found
    assertThat(after(mark("hit", 121.5), 200)).containsExactly(reason("hit", 121.5));
    assertThat(marks.take(200)).isEmpty();
    assertThat(after(mark("practice", 81.5), 200)).containsExactly(reason("practice", 81.5));
    assertThat(after(mark("hit", 120.9), 200)).isEmpty();
    assertThat(after(mark("hit", 82.5), 200)).isEmpty();
  }

  private static Reason reason(String word, double atS) {
    return Reason.of(MarkReason.FAR, word, atS);
  }

  @Test
  void aNoteOfNoSwingIsOneOfTheLesson() {
    assertThat(after(mark("note", 30), 200))
        .containsExactly(Reason.of(MarkReason.NOTE, "left heel", 30.0));
  }

  @Test
  void wearStepsAndClubsSpeakOfNoSwing() {
    assertThat(after(mark("bow", 30), 200)).isEmpty();
    assertThat(after(mark("club", 30), 200)).isEmpty();
  }

  @Test
  void aSwingMayStillComeForFifteenSeconds() {
    assertThat(after(mark("hit", 300), 314)).isEmpty();
    assertThat(marks.take(315.5)).containsExactly(reason("hit", 300));
  }

  @Test
  void aSwingThatIsFoundLaterTakesItsMark() {
    marks.read(List.of(mark("hit", 119)), List.of());
    marks.read(List.of(), List.of(SWING));
    assertThat(marks.take(500)).isEmpty();
  }

  @Test
  void aMarkIsKnownAgainOnTheAxisOfAnotherPiece() {
    // clocks of two pieces differ by milliseconds
    assertThat(UnplacedMarks.isAmong(mark("hit", 120.05), SWING.noted())).isTrue();
    assertThat(UnplacedMarks.isAmong(mark("hit", 120.3), SWING.noted())).isFalse();
    assertThat(UnplacedMarks.isAmong(mark("practice", 120), SWING.noted())).isFalse();
    marks.read(List.of(mark("hit", 300)), List.of());
    marks.read(List.of(mark("hit", 300.05)), List.of());
    assertThat(marks.take(500)).hasSize(1);
    marks.read(List.of(mark("hit", 300.1)), List.of());
    assertThat(marks.take(500)).isEmpty();
  }

  @Test
  void whatWasNotedSinceReplacesKindClubAndNote() {
    Swing plain =
        new Swing(1, SwingKind.HIT, "driver", 97, 106, List.of(), List.of("address-short"));
    Mark practice = new Mark(104, 0, "practice", "7-iron", "slow");
    Swing again =
        new Swing(
            1,
            SwingKind.PRACTICE,
            "7-iron",
            98,
            106,
            List.of(),
            List.of("address-not-seen", "shock-in-practice"),
            List.of(practice, mark("note", 107)));
    Swing both = plain.noted(again);
    assertThat(both.kind()).isEqualTo(SwingKind.PRACTICE);
    assertThat(both.club()).isEqualTo("7-iron");
    assertThat(both.flags()).containsExactly("address-short", "shock-in-practice");
    assertThat(both.startS()).isEqualTo(97);
    assertThat(both.note()).isEqualTo("slow; left heel");
    assertThat(both.noted(plain)).isEqualTo(both);
    Swing unnamed =
        new Swing(
            1, SwingKind.HIT, "9-iron", 97, 106, List.of(), List.of(), List.of(mark("hit", 104)));
    assertThat(both.noted(unnamed).club()).isEqualTo("7-iron");
  }
}
