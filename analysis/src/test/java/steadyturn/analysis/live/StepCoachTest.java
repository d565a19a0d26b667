package steadyturn.analysis.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.live.StepNews.What;
import steadyturn.fusion.wear.StepReason;
import steadyturn.ingest.mark.MarkStretches;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Wear steps watched while they are done, against the same read afterwards. Given in all: simulated
 * lessons of one ball, 200 Hz, their samples coming in order of time, looked at four times a
 * second.
 */
class StepCoachTest {

  private static final double LOOK_EVERY_S = 0.25;

  /** A lesson that plays, with what is told of its steps. */
  private static final class Played {

    final Recording noted;
    final LatestSamples samples;
    final StepCoach coach;
    final List<StepNews> news = new ArrayList<>();
    final List<Mark> marks = new ArrayList<>();
    final List<Mark> found = new ArrayList<>();
    private final int[] next;

    Played(Recording noted) {
      this.noted = noted;
      samples = new LatestSamples(noted.id(), noted.player(), UnaryOperator.identity());
      noted.units().forEach(unit -> samples.unit(unit.facts(), 0));
      coach = new StepCoach(samples, found::add);
      next = new int[noted.units().size()];
    }

    void until(double timeS) {
      double[] accel = new double[3];
      double[] gyro = new double[3];
      for (int u = 0; u < next.length; u++) {
        UnitStream unit = noted.units().get(u);
        int i = next[u];
        for (; i < unit.size() && unit.timeS(i) <= timeS; i++) {
          for (int axis = 0; axis < 3; axis++) {
            accel[axis] = unit.accelMps2(axis, i);
            gyro[axis] = unit.gyroRadPerS(axis, i);
          }
          samples.add(unit.point(), unit.timeS(i), accel, gyro);
        }
        next[u] = i;
      }
    }

    /** Types each step so much late, and watches until the end of the last. */
    Played withStepsTyped(double lateS) {
      Deque<Mark> typed = new ArrayDeque<>();
      for (Mark mark : noted.marks()) {
        if (MarkWord.of(mark.trialType()).filter(MarkWord::isStep).isPresent()) {
          typed.add(new Mark(mark.onsetS() + lateS, 0, mark.trialType(), "", ""));
        }
      }
      double endS = typed.getLast().onsetS() + 12;
      for (double nowS = 0; nowS < endS; nowS += LOOK_EVERY_S) {
        while (!typed.isEmpty() && typed.getFirst().onsetS() <= nowS) {
          Mark mark = typed.removeFirst();
          until(mark.onsetS());
          coach.end(mark.onsetS()).ifPresent(news::add);
          coach.begin(MarkWord.of(mark.trialType()).orElseThrow(), mark.onsetS());
          marks.add(mark);
        }
        until(nowS);
        double at = nowS;
        coach
            .look(nowS)
            .ifPresent(
                told -> {
                  news.add(told);
                  if (told.what() == What.DONE) {
                    marks.add(new Mark(at, 0, "done", "", ""));
                  }
                });
      }
      return this;
    }

    Set<MarkWord> told(What what) {
      return news.stream()
          .filter(n -> n.what() == what)
          .map(StepNews::step)
          .collect(Collectors.toSet());
    }

    /** The steps that are refused when the lesson is analysed with these marks. */
    Set<String> refusedAfterwards() {
      Recording typed = noted.with(MarkStretches.of(marks));
      return LessonAnalyzer.withDefaults().analyze(List.of(typed)).get(0).notices().stream()
          .filter(notice -> notice.reason().code() instanceof StepReason)
          .map(Notice::about)
          .collect(Collectors.toSet());
    }
  }

  private static Recording lesson(long seed) {
    LessonSpec spec = LessonSpec.standard().withHits(1).withPractices(0).withRateHz(200);
    return LessonSimulator.simulate(spec, seed).recording();
  }

  @ParameterizedTest
  @CsvSource({"21,-0.4", "22,0", "23,0.2", "24,-1"})
  void everyStepIsDoneWhenItIsAndReadTheSameAfterwards(long seed, double lateS) {
    // Given: all seven steps, typed early or late. Expect: each told to be done, and none refused
    // by
    // the analysis of the same samples with the marks that were left.
    Played played = new Played(lesson(seed)).withStepsTyped(lateS);
    assertThat(played.told(What.DONE)).hasSize(7);
    assertThat(played.refusedAfterwards()).isEmpty();
    assertThat(played.found).hasSize(7).noneMatch(Mark::open);
  }

  @Test
  void aStepThatIsDoneIsToldWithinASecondOfIt() {
    // Given: seed 22. Expect: two still seconds told 2.0 to 2.6 s after the mark.
    Played played = new Played(lesson(22)).withStepsTyped(0);
    double begunS = at(played, "quiet-stance");
    double doneS =
        played.marks.stream()
            .filter(m -> m.trialType().equals("done") && m.onsetS() > begunS)
            .findFirst()
            .orElseThrow()
            .onsetS();
    assertThat(doneS - begunS).isBetween(2.0, 2.6);
    assertThat(played.told(What.HOLDING)).contains(MarkWord.QUIET_STANCE, MarkWord.AIM);
    // by half seconds, growing; and nobody who just began to stand still is told to begin again
    assertThat(played.news)
        .filteredOn(n -> n.what() == What.HOLDING)
        .extracting(StepNews::heldS)
        .containsOnly(0.5, 1.0, 1.5);
    assertThat(played.told(What.AGAIN))
        .doesNotContain(MarkWord.QUIET_STANCE, MarkWord.AIM, MarkWord.TABLE_REST);
  }

  private static double at(Played played, String step) {
    return played.marks.stream()
        .filter(m -> m.trialType().equals(step))
        .findFirst()
        .orElseThrow()
        .onsetS();
  }

  @Test
  void aStepNobodyDoesIsRefusedLiveAndAfterwards() {
    // Given: a bow typed while the player stands still with hanging arm. Expect: refused in both.
    Recording noted = lesson(22);
    double stillS =
        noted.marks().stream()
            .filter(m -> m.trialType().equals("neutral-wrist"))
            .findFirst()
            .orElseThrow()
            .onsetS();
    Played played = new Played(noted);
    played.until(stillS);
    played.coach.begin(MarkWord.BOW, stillS);
    for (double t = stillS; t < stillS + 2; t += LOOK_EVERY_S) {
      played.until(t);
      assertThat(played.coach.look(t)).isEmpty();
    }
    StepNews end = played.coach.end(stillS + 2).orElseThrow();
    assertThat(end.what()).isEqualTo(What.AGAIN);
    assertThat(end.result().why().code()).isEqualTo(StepReason.BOW_LITTLE);
    played.marks.add(new Mark(stillS, 0, "bow", "", ""));
    played.marks.add(new Mark(stillS + 2, 0, "done", "", ""));
    assertThat(played.refusedAfterwards()).containsExactly("bow");
  }

  @Test
  void aStepOfAUnitThatIsNotThereIsRefused() {
    Recording noted = lesson(22);
    StepCoach coach =
        new StepCoach(
            new LatestSamples(noted.id(), noted.player(), UnaryOperator.identity()),
            mark -> {
              throw new AssertionError("nothing was done, yet found was " + mark);
            });
    coach.begin(MarkWord.COCKING, 5);
    assertThat(coach.look(6)).isEmpty();
    assertThat(coach.end(9).orElseThrow().result().why().code()).isEqualTo(StepReason.LOST);
    assertThat(coach.end(10)).isEmpty();
  }
}
