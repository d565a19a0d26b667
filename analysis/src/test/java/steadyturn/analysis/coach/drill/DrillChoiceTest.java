package steadyturn.analysis.coach.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class DrillChoiceTest {

  private static final Teaching SHIPPED = TeachingReader.shipped();
  private static final Drill TURN = SHIPPED.drill("club-across-hips");

  /** Swings whose value goes up and down by {@code spread} about {@code mean}. */
  private static SwingGroup swings(MeasureAt what, double mean, double spread, double error) {
    List<LessonSwing> out = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      double value = mean + (i % 2 == 0 ? spread : -spread);
      var of =
          MeasureValue.of(what.measure(), what.at(), value, error, Grade.MEASURED, Reason.NONE);
      out.add(
          new LessonSwing(
              "",
              new SwingResult(i, "", SwingKind.HIT, List.of(), List.of(), List.of(of), List.of())));
    }
    return new SwingGroup("g", out);
  }

  @Test
  void theGoalIsHalfTheWayWhereThatCanBeShown() {
    // Given: 20 deg of turn, 1 deg of spread, a goal of 40 to 62 deg. Expect: half the way, 30.
    Drill drill = DrillChoice.ahead(TURN, swings(TURN.judgedBy(), -20, 1, 0.5)).orElseThrow();
    assertThat(drill.low()).isEqualTo(-62);
    assertThat(drill.high()).isEqualTo(-30);
  }

  @Test
  void whatCannotBeShownIsNoGoal() {
    // Given: 38 deg of turn, 2 deg short of the goal, wandering by 6 deg. Expect: not 39 nor 40,
    // but
    // as far as eight repetitions can show beyond 38, rounded away from there to whole degrees.
    SwingGroup now = swings(TURN.judgedBy(), -38, 6, 0.5);
    double detectable =
        GroupSummary.of(now, TURN.judgedBy(), ErrorSplit.defaults()).detectableAgainst(8);
    assertThat(detectable).isGreaterThan(5);
    Drill drill = DrillChoice.ahead(TURN, now).orElseThrow();
    assertThat(drill.high()).isEqualTo(-Math.ceil(38 + detectable), within(1e-9));
  }

  @Test
  void aGoalThatIsReachedIsLeftOutAndWithNoneLeftTheFirstStaysWithoutANumber() {
    Drill share = SHIPPED.drill("bag-beside-hip");
    SwingGroup full = swings(TURN.judgedBy(), -45, 1, 0.5);
    assertThat(DrillChoice.ahead(TURN, full)).isEmpty();
    assertThat(DrillChoice.of(List.of(TURN, share), full))
        .extracting(Drill::name)
        .containsExactly("bag-beside-hip");
    assertThat(DrillChoice.of(List.of(TURN), full).get(0).hasNumber()).isFalse();
  }

  @Test
  void noGoalIsReachedBeforeItBeginsAndEachIsAStepThatCanBeShown() {
    // Given: every shipped drill, 300 players each who stand anywhere about its goal (seed 31).
    // Expect: a goal that their mean is outside of by at least the detectable change, or half the
    // goal's width where the goal is narrower than what can be shown; the far end stays.
    Random random = new Random(31);
    for (Drill drill : SHIPPED.drills()) {
      double width = drill.high() - drill.low();
      for (int i = 0; i < 300; i++) {
        double mean = drill.low() + width * (4 * random.nextDouble() - 1.5);
        SwingGroup now =
            swings(drill.judgedBy(), mean, width * 0.3 * random.nextDouble(), width * 0.02);
        double detectable =
            GroupSummary.of(now, drill.judgedBy(), ErrorSplit.defaults())
                .detectableAgainst(drill.reps());
        DrillChoice.ahead(drill, now)
            .ifPresent(
                next -> {
                  assertThat(mean < next.low() || mean > next.high()).isTrue();
                  double away = Math.max(next.low() - mean, mean - next.high());
                  double whole = Math.max(drill.low() - mean, mean - drill.high());
                  assertThat(away)
                      .isGreaterThanOrEqualTo(Math.min(detectable, whole + width / 2) - 1e-9);
                  assertThat(mean < drill.low() ? next.high() : next.low())
                      .isEqualTo(mean < drill.low() ? drill.high() : drill.low());
                });
      }
    }
  }

  @Test
  void aLimitAndTheGoalThatBearsItsNameAreOneNumber() {
    // Given: a teacher who wants 65 % of turn from one player. Expect: the drill asks the same.
    Teaching own =
        SHIPPED.with(
            TeachingReader.parse(
                "own", "[[own-limit]]\nplayer = \"ana\"\nlimit = \"share-low\"\nvalue = 65\n"));
    assertThat(own.forPlayer("ana", "").drill("bag-beside-hip").low()).isEqualTo(65);
    assertThat(own.forPlayer("mika", "").drill("bag-beside-hip").low()).isEqualTo(60);
    for (Rule rule : SHIPPED.findings()) {
      assertThat(rule.drills()).as(rule.name()).isNotEmpty();
    }
  }
}
