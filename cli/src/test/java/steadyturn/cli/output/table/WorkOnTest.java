package steadyturn.cli.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;

class WorkOnTest {

  private static final Teaching TEACHING = TeachingReader.shipped();

  private static RuleFinding finding(Rule rule, OptionalInt more) {
    List<Evidence> evidence =
        rule.when().stream()
            .limit(1)
            .map(
                need ->
                    new Evidence(
                        need,
                        TEACHING.limit(need.limit()),
                        41,
                        31.4,
                        50.6,
                        Certainty.YES,
                        OptionalInt.empty()))
            .toList();
    return new RuleFinding(rule, Certainty.YES, evidence, List.of(), more);
  }

  @Test
  void theAnswerStandsInTheFirstFiveLinesOfEightyColumns() {
    RuleFinding slide = finding(TEACHING.findings().get(0), OptionalInt.empty());
    Advice advice = new Advice(8, List.of(), Optional.of(slide), List.of(), List.of(), List.of());
    List<String> lines =
        new WorkOn("7-iron", advice, Optional.of(TEACHING.drill("bag-beside-hip"))).lines();
    assertThat(lines)
        .containsExactly(
            "Work on       Slides more than it turns (8 swings, 7-iron)",
            "Seen by       share of turn at top 41 % (31 to 51), limit 60",
            "Drill         Bag beside the hip: share of turn at top between 60 and 100 %");
  }

  @Test
  void whereNothingIsSureItSaysSoAndWhatIsGood() {
    RuleFinding open = finding(TEACHING.findings().get(0), OptionalInt.of(4));
    RuleFinding good = finding(TEACHING.good().get(0), OptionalInt.empty());
    Advice advice =
        new Advice(8, List.of(), Optional.empty(), List.of(), List.of(good), List.of(open));
    assertThat(new WorkOn("", advice, Optional.empty()).lines())
        .containsExactly(
            "Work on       nothing stands out beyond doubt (8 swings, no club noted)",
            "Not sure      Slides more than it turns: not sure yet. About 4 more swings would",
            "              tell.",
            "Good          Your hips make a full turn in the backswing.");
    Advice none = new Advice(0, List.of(), Optional.empty(), List.of(), List.of(), List.of());
    assertThat(new WorkOn("", none, Optional.empty()).lines())
        .containsExactly("Work on       No full swing was recorded in this lesson.");
  }
}
