package steadyturn.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadyturn.cli.CommandLineRun;

/** The command in small: what it prints, never how fast it was. */
final class BenchCommandTest {

  @Test
  void aLessonIsTimedBesideTheYardstickWithTheShareOfEachRoom() {
    // Given: two swings, seed 7. Expect: the ratio printed is that of the two times printed, and
    // the
    // rooms' own shares make a whole. Within 2 %: figures are printed with two decimals.
    CommandLineRun run = CommandLineRun.of("bench", "--swings", "2");
    assertThat(run.exitCode()).as(run.err()).isZero();
    double yardstickS = number(run.out(), "yardstick +([0-9.]+) s");
    double processorS = number(run.out(), "processor time +([0-9.]+) s");
    double ratio = number(run.out(), "processor time .* ([0-9.]+) yardsticks");
    assertThat(ratio * yardstickS / processorS).isBetween(0.98, 1.02);
    assertThat(number(run.out(), "peak heap +([0-9]+) MB")).isPositive();
    assertThat(run.out()).contains("  ingest.recording ");
    double sum =
        Pattern.compile("(?m)^  [a-z]+[.a-z]* +([0-9.]+) %")
            .matcher(run.out())
            .results()
            .mapToDouble(m -> Double.parseDouble(m.group(1)))
            .sum();
    assertThat(sum).isBetween(90.0, 101.0); // those below half a percent are not listed
  }

  @Test
  void aLessonWithoutSwingsIsWrongUsage() {
    CommandLineRun run = CommandLineRun.of("bench", "--swings", "0");
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("--swings must be 1 or more, was 0");
  }

  private static double number(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertThat(matcher.find()).as(pattern + " in " + text).isTrue();
    return Double.parseDouble(matcher.group(1));
  }
}
