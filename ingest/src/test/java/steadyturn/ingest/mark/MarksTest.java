package steadyturn.ingest.mark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.recording.dataset.EventsFile;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.sample.Mark;

/** Marks as people note them, as stretches of time. */
class MarksTest {

  @TempDir private Path folder;

  private static Mark at(double onsetS, String word) {
    return new Mark(onsetS, 0, word, "", "");
  }

  @Test
  void aStepReachesToTheNextMarkAndANoteEndsNothing() {
    // Given: typed marks, a note among them. Expect: each step to the next mark or done, the last
    // for two minutes (our choice); what is no step stays an instant. Exact: differences of halves.
    List<Mark> laid =
        MarkStretches.of(
            List.of(
                at(30, "cocking"),
                at(10, "aim"),
                at(12.5, "note"),
                at(13, ""),
                at(14, "bow"),
                at(20.5, "done"),
                at(22, "hit")));
    assertThat(laid)
        .containsExactly(
            at(10, "aim").openFor(4),
            at(12.5, "note"),
            at(13, ""),
            at(14, "bow").openFor(6.5),
            at(20.5, "done"),
            at(22, "hit"),
            at(30, "cocking").openFor(120));
  }

  @Test
  void aStretchThatWasNotedKeepsItsLengthAndIsLaidOnce() {
    List<Mark> noted = List.of(new Mark(1, 9, "bow", "", ""), at(4, "aim"), at(6, "hit"));
    List<Mark> laid = MarkStretches.of(noted);
    assertThat(laid.get(0)).isEqualTo(noted.get(0));
    assertThat(laid.get(1)).isEqualTo(at(4, "aim").openFor(2));
    assertThat(MarkStretches.of(laid)).isEqualTo(laid);
  }

  @ParameterizedTest
  @CsvSource({
    "bwo,bow",
    "quiet stance,quiet-stance",
    "neutral,neutral-wrist",
    "hti,hit",
    "pratice,practice",
    "cock,cocking",
    "tabel-rest,table-rest",
    "colub,club"
  })
  void aSlipOfTheFingersIsNearestToWhatWasMeant(String typed, String meant) {
    assertThat(MarkWord.of(typed)).isEmpty();
    assertThat(MarkWord.nearest(typed, MarkWord.words())).isEqualTo(meant);
  }

  @Test
  void everyWordIsReadAsItIsWrittenAndInCapitals() {
    for (MarkWord word : MarkWord.values()) {
      assertThat(MarkWord.of(word.word())).contains(word);
      assertThat(MarkWord.of(word.name())).contains(word);
    }
    assertThat(MarkWord.steps()).hasSize(8);
  }

  @Test
  void anUnknownWordOfAnEventsFileIsLeftOutAndNamedOnce() throws IOException {
    Path file = folder.resolve("sub-a_ses-1_task-swing_tracksys-pelvis_events.tsv");
    Files.writeString(
        file,
        "onset\tduration\ttrial_type\n1\t0\tbwo\n2\t0\tbow\n3\t0\tbwo\n5\t0\tHIT\n6\t0\tn/a\n");
    List<String> notices = new ArrayList<>();
    List<Mark> marks = EventsFile.read(file, 0, notices);
    assertThat(marks).containsExactly(at(2, "bow").openFor(3), at(5, "hit"), at(6, ""));
    assertThat(notices)
        .singleElement()
        .asString()
        .contains("line 2, column trial_type: \"bwo\"")
        .contains("nearest one is \"bow\"");
  }

  @Test
  void whatIsSaidOfASwingIsChangedInAFinishedRunAndNothingElse() throws IOException {
    // Given: two swings with notes, a row with a word of someone else. Said of the one at 20 s: it
    // is left out. Expect: its note gone, all other rows as they were, letter by letter.
    Path file = folder.resolve("events.tsv");
    String head = "onset\tduration\ttrial_type\tclub\tnote\n";
    String others = "9.5\t0\tbow\tn/a\tn/a\n10\t0\tnote\tn/a\tgood\n15\t0\tsneeze\tn/a\tn/a\n";
    Files.writeString(file, head + others + "20.3\t0\tnote\tn/a\tbad\n20.2\t0\thit\tn/a\tn/a\n");
    EventsFile.about(file, 20, List.of(at(20, "left-out")));
    assertThat(Files.readString(file))
        .isEqualTo(
            head + others + "20.2\t0\thit\tn/a\tn/a\n20.000000\t0.000000\tleft-out\tn/a\tn/a\n");
  }

  @Test
  void aStretchThatFollowsFromTheNextMarkIsNotWrittenAsIfItHadBeenNoted() throws IOException {
    // Given: marks read, written and read again. Expect: the same.
    List<Mark> marks = MarkStretches.of(List.of(at(1, "aim"), at(4, "bow"), at(9, "done")));
    RunLabel label = RunLabel.lesson("a", "1");
    EventsFile.write(folder, label, "pelvis", marks);
    Path file = folder.resolve(label.fileName("pelvis", "events.tsv"));
    assertThat(Files.readString(file)).contains("1.000000\t0.000000\taim");
    assertThat(EventsFile.read(file, 0, new ArrayList<>())).isEqualTo(marks);
  }
}
