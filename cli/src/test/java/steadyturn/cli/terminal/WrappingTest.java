package steadyturn.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A warning is one line for programs, and lines of at most 80 columns at a terminal. */
class WrappingTest {

  @Test
  void aLongWarningIsBrokenWhereAPersonWatchesOnly() {
    // Given: what report says of a page that was there, 99 columns. Expect: all words in order.
    String line =
        "steadyturn: ./sub-anna_ses-01_page-teacher.html was there already; the new page has taken"
            + " its place";
    String watched = Wrapping.said(line, true);
    assertThat(watched.lines()).hasSize(2).allMatch(l -> l.length() <= 80);
    assertThat(watched.replaceAll("\\s+", " ")).isEqualTo(line);
    assertThat(Wrapping.said(line, false)).isEqualTo(line);
  }
}
