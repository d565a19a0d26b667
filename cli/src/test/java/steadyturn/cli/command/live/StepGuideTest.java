package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.live.LatestSamples;
import steadyturn.analysis.live.StepCoach;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;

/** How a person is led through the steps. Given in all: a still pelvis unit at 100 Hz. */
class StepGuideTest {

  private final List<String> said = new ArrayList<>();
  private final List<MarkWord> marks = new ArrayList<>();
  private final LatestSamples samples =
      new LatestSamples("a", Player.unmeasured("mika", Handedness.RIGHT), UnaryOperator.identity());
  private final StepGuide guide =
      new StepGuide(new StepCoach(samples, mark -> {}), marks::add, said::add);
  private double nowS;

  private void stillFor(double seconds) {
    samples.unit(UnitFacts.plain(BodyPoint.PELVIS, 100), 0);
    for (double untilS = nowS + seconds; nowS < untilS; nowS += 0.01) {
      samples.add(BodyPoint.PELVIS, nowS, new double[] {9.8, 0, 0}, new double[3]);
      if (Math.round(nowS * 100) % 25 == 0) {
        guide.look(nowS);
      }
    }
  }

  private String last() {
    return said.get(said.size() - 1);
  }

  @Test
  void aStepIsOfferedBegunCountedAndDone() {
    guide.offer(List.of(BodyPoint.PELVIS));
    assertThat(said.get(0)).startsWith("Next step, table rest:");
    guide.begin(nowS);
    assertThat(marks).containsExactly(MarkWord.TABLE_REST);
    stillFor(1.8);
    assertThat(guide.status()).isEqualTo("table rest: still 1.5 s");
    stillFor(0.6);
    assertThat(marks).containsExactly(MarkWord.TABLE_REST, MarkWord.DONE);
    assertThat(said).contains("table rest: done");
    assertThat(last()).startsWith("Next step, aim:");
    assertThat(guide.status()).isEmpty();
  }

  @Test
  void enterGoesOnFromAStepThatIsNotDone() {
    guide.offer(List.of(BodyPoint.PELVIS));
    guide.begin(MarkWord.BOW, nowS);
    stillFor(3);
    guide.begin(nowS);
    assertThat(said).anyMatch(line -> line.startsWith("bow, not done:"));
    assertThat(guide.status()).startsWith("turn on spot");
    assertThat(marks).containsExactly(MarkWord.BOW, MarkWord.DONE, MarkWord.TURN_ON_SPOT);
    stillFor(3);
    guide.begin(nowS);
    assertThat(guide.status()).startsWith("table rest");
  }

  @Test
  void aStepIsSkippedPutOffAndDoneAgain() {
    guide.offer(List.of(BodyPoint.PELVIS));
    guide.leave(false, nowS);
    assertThat(last()).startsWith("Next step, aim:");
    guide.leave(true, nowS);
    assertThat(last()).startsWith("Next step, quiet stance:");
    guide.begin(nowS);
    stillFor(2.6);
    guide.leave(false, nowS);
    guide.leave(false, nowS);
    assertThat(last()).startsWith("Next step, aim:");
    guide.again(nowS);
    assertThat(guide.status()).startsWith("quiet stance");
    assertThat(marks).containsExactly(MarkWord.QUIET_STANCE, MarkWord.DONE, MarkWord.QUIET_STANCE);
  }

  @Test
  void aStepBegunByMistakeIsDroppedWithoutAWord() {
    guide.begin(MarkWord.BOW, nowS);
    stillFor(1);
    int before = said.size();
    guide.dropped(MarkWord.AIM, nowS);
    assertThat(guide.status()).startsWith("bow");
    guide.dropped(MarkWord.BOW, nowS);
    assertThat(guide.status()).isEmpty();
    assertThat(said).hasSize(before);
  }

  @Test
  void enterBeforeAnyUnitSendsIsAnswered() {
    guide.begin(nowS);
    assertThat(said).containsExactly("The steps are offered as soon as the units send.");
    assertThat(marks).isEmpty();
    guide.begin(MarkWord.TABLE_REST, nowS);
    assertThat(marks).containsExactly(MarkWord.TABLE_REST);
  }

  @Test
  void stepsOfUnitsThatAreNotThereAreNotOffered() {
    guide.offer(List.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND));
    assertThat(said.get(0)).startsWith("Next step, neutral wrist:");
    guide.leave(false, nowS);
    guide.leave(false, nowS);
    assertThat(last()).startsWith("No step is left");
  }

  @Test
  void aStepThatEndsUndoneIsSaidAndOfferedLater() {
    guide.offer(List.of(BodyPoint.PELVIS));
    guide.begin(MarkWord.BOW, nowS);
    stillFor(3);
    guide.done(nowS);
    assertThat(said)
        .anyMatch(line -> line.startsWith("bow, not done: the hips hardly bent forward"));
    guide.strike();
    assertThat(last()).startsWith("steps left out").contains("5 bow", "1 table rest", "2 aim");
  }
}
