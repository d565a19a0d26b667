package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.MarkReason;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.reason.Reason;

/** What is said after each ball. Given in all: invented balls of which the tempo is known. */
class BallVoiceTest {

  private final List<String> said = new ArrayList<>();
  private final BallVoice voice =
      new BallVoice(new BallAnswer("mika", TeachingReader.shipped()), said::addAll);

  private static SwingResult ball(int number, double tempo) {
    return new SwingResult(
        number,
        "7-iron",
        SwingKind.HIT,
        List.of(),
        List.of(),
        List.of(MeasureValue.of(Measure.TEMPO_RATIO, "", tempo, 0.05, Grade.MEASURED, Reason.NONE)),
        List.of());
  }

  private String tempo() {
    return said.stream().filter(line -> line.contains("tempo")).reduce((a, b) -> b).orElseThrow();
  }

  @Test
  void whatIsUsualIsTheMeanOfTheBallsBefore() {
    voice.measured(ball(1, 2), 0.1);
    voice.measured(ball(2, 3), 0.1);
    assertThat(tempo()).doesNotContain("usual");
    voice.measured(ball(3, 9), 0.1);
    assertThat(tempo()).contains("usual 2.5"); // of 2 and 3
  }

  @Test
  void aBallKnownBetterLaterCountsAsItIsKnown() {
    voice.measured(ball(1, 2), 0.1);
    voice.measured(ball(2, 3), 0.1);
    voice.revised(List.of(ball(1, 4)));
    voice.measured(ball(3, 9), 0.1);
    assertThat(tempo()).contains("usual 3.5"); // of 4 and 3
  }

  @Test
  void aBallThatIsNotedAsAnotherOneIsSaid() {
    voice.measured(ball(1, 2), 0.1);
    said.clear();
    voice.revised(List.of(ball(1, 2.5), ball(2, 3)));
    assertThat(said).isEmpty();
    SwingResult practice =
        new SwingResult(
            1, "driver", SwingKind.PRACTICE, List.of(), List.of(), List.of(), List.of());
    voice.revised(List.of(practice));
    assertThat(said).containsExactly("Ball 1 is now: driver, practice");
  }

  @Test
  void aTroubleIsSaidOnceWithTheUnitItIsOf() {
    Notice gap = new Notice("pelvis", Reason.of(QualityReason.GAP, 1, 5.0));
    voice.noticed(gap);
    voice.noticed(new Notice("pelvis", Reason.of(QualityReason.GAP, 2, 6.0)));
    assertThat(said.get(0)).startsWith("* pelvis: There is a gap of 5.00 s.");
    assertThat(said.stream().filter(line -> line.startsWith("*"))).hasSize(1);
    voice.noticed(new Notice("lead_hand", Reason.of(QualityReason.GAP, 2, 6.0)));
    assertThat(said.stream().filter(line -> line.startsWith("*"))).hasSize(2);
  }

  @Test
  void everyMarkThatBelongsToNoBallIsSaid() {
    voice.noticed(new Notice("", Reason.of(MarkReason.FAR, "hit", 12.0)));
    voice.noticed(new Notice("", Reason.of(MarkReason.FAR, "hit", 80.0)));
    assertThat(String.join(" ", said))
        .contains("hit noted at 12 s is left out", "hit noted at 80 s is left out");
  }
}
