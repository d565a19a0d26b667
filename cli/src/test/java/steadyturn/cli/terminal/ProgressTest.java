package steadyturn.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import org.junit.jupiter.api.Test;

final class ProgressTest {

  private final StringWriter err = new StringWriter();

  @Test
  void workOfUnderTwoSecondsShowsNoBar() {
    Progress progress = new Progress(err::append, true, 4, 0);
    progress.at("first", 1_900_000_000L);
    progress.clear();
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void longerWorkShowsHowMuchIsDone() {
    Progress progress = new Progress(err::append, true, 4, 0);
    progress.step();
    progress.at("second", 2_100_000_000L);
    assertThat(err.toString()).contains("1 of 4, second").contains("#######.");
  }

  @Test
  void nobodyWatchingNoBar() {
    Progress progress = new Progress(err::append, false, 4, 0);
    progress.at("first", 9_000_000_000L);
    assertThat(err.toString()).isEmpty();
  }
}
