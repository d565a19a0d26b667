package steadyturn.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import steadyturn.cli.CommandLineRun;
import steadyturn.cli.House;

/** The command in small: what it prints, never how fast it was. */
final class BenchCommandTest {

  /** A line of the shares: the room, and what it took itself. */
  private static final Pattern ROOM =
      Pattern.compile("(?m)^  ([a-z]+[.a-z]*) +([0-9.]+) % +[0-9.]+ %$");

  private static final Set<String> ROOMS =
      House.classes().stream()
          .map(type -> type.getPackageName().replaceFirst("^steadyturn[.]", ""))
          .collect(Collectors.toSet());

  @Test
  void aLessonIsTimedBesideTheYardstickWithTheShareOfEachRoom() {
    // Given: four swings, seed 7. Expect: the ratio printed is that of the two times printed,
    // every room listed is one of the program's, and the rooms' own shares make a whole, whatever
    // the looks at the threads happened to meet. Within 2 %: figures have two decimals.
    CommandLineRun run = CommandLineRun.of("bench", "--swings", "4");
    assertThat(run.exitCode()).as(run.err()).isZero();
    double yardstickS = number(run.out(), "yardstick +([0-9.]+) s");
    double processorS = number(run.out(), "processor time +([0-9.]+) s");
    double ratio = number(run.out(), "processor time .* ([0-9.]+) yardsticks");
    assertThat(ratio * yardstickS / processorS).isBetween(0.98, 1.02);
    assertThat(number(run.out(), "peak heap +([0-9]+) MB")).isPositive();
    List<MatchResult> rooms = ROOM.matcher(run.out()).results().toList();
    assertThat(rooms).extracting(room -> room.group(1)).as(run.out()).allMatch(ROOMS::contains);
    double sum = rooms.stream().mapToDouble(room -> Double.parseDouble(room.group(2))).sum();
    assertThat(sum).as(run.out()).isBetween(90.0, 101.0); // below half a percent is not listed
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
