package steadyturn.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TerminalDeskTest {

  @Test
  void aLongLineIsFoldedBetweenWordsSoThatNothingWraps() {
    // Given: 30 words of nine letters and a blank. Expect: the same words, no line over 79 columns,
    // the later lines indented; what has no blank stays whole.
    String line = "abcdefghi ".repeat(30).strip();
    String folded = TerminalDesk.folded(line, 79);
    assertThat(folded.lines()).hasSize(5).allMatch(part -> part.length() <= 79);
    assertThat(folded.lines().skip(1)).allMatch(part -> part.startsWith("    a"));
    assertThat(folded.replaceAll("\\s+", " ")).isEqualTo(line);
    assertThat(TerminalDesk.folded("x".repeat(200), 79)).hasSize(200);
    assertThat(TerminalDesk.folded("short", 79)).isEqualTo("short");
  }
}
