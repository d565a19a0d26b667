package steadyturn.cli.command.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lab.telling.KnownFault;

/** The short form; {@code ./steadyturn accuracy --pages 100} is the long one. */
class PageScanTest {

  private static final PageJudge JUDGE = new PageJudge();

  @Test
  void thePagesOfASliderSayWhatWasPutInAndNothingAgainstIt() {
    // Given: five balls of the first kind, seed 5001. Expect: the slide first, no complaint.
    KnownFault slider = KnownFault.all().get(0);
    PageScan.Judged judged = PageScan.judge(slider, 5, 5001);
    assertThat(judged.told()).isEqualTo("slide-for-turn");
    assertThat(judged.right()).isTrue();
    assertThat(judged.complaints()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "steady-centre beside slide-for-turn | <li>Your hips stay in place while they turn back.</li>"
            + "<p>Slides more than it turns</p>",
        "comes-forward beside pelvis-behind | <li>Your hips come forward, towards the target, in time"
            + " for the ball.</li><span>the pelvis is still behind at impact</span> <em"
            + " class=\"seen\">seen</em>",
        "a fault, and page.keep | <p>Turn your hips further back</p><p>This is good. Keep it</p>",
        "something good, and nothing good | <li>Your hips turn about the same amount every time.</li>"
            + "None of the things looked for is good beyond doubt in these swings.",
        "beyond the limit, and not: (30 to 64); limit 60 | <b>37 %</b> (30 to 64); limit 60 %",
        "pin 7.5 cm in the picture, 149 mm in numbers | turned about, 7.5 cm off <th>Pivot, from the"
            + " middle of the hips at the top</th><td>149 mm"
      })
  void aJudgeSeesWhatContradictsItself(String complaint, String page) {
    assertThat(JUDGE.ofPage(page)).containsExactly(complaint);
  }

  @Test
  void aGoalDrawnAsWhatIsThereIsSeen() {
    String bar = "<line x1=\"1\" y1=\"2\" x2=\"%s\" y2=\"4\" stroke=\"#000000\"/></svg>";
    String now = "<svg aria-labelledby=\"hinge-now-title\">" + bar.formatted("30");
    String goal = "<svg aria-labelledby=\"hinge-goal-title\">";
    assertThat(JUDGE.ofPage(now + goal + bar.formatted("31")))
        .isEqualTo(List.of("where to go is drawn as what is there already"));
    assertThat(JUDGE.ofPage(now + goal + bar.formatted("40"))).isEmpty();
  }
}
