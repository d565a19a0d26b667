package steadyturn.cli.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;

class TerminalTest {

  @TempDir private Path folder;

  @Test
  void noControlCharacterOfOthersReachesAScreen() {
    // Given: every character up to U+20FF by each way of printing. Expect: of the control
    // characters (C0, DEL, C1) line end and tab alone, none of the nine that turn the direction.
    StringWriter screen = new StringWriter();
    Terminal terminal = new Terminal(screen, true);
    for (char c = 0; c < 0x2100; c++) {
      terminal.print(c);
      terminal.print("x" + c);
      terminal.write(new char[] {c});
      terminal.append(c).append("y" + c);
      terminal.printf(java.util.Locale.ROOT, "%s", c);
    }
    terminal.println("\u001b]0;title\u0007");
    String shown = screen.toString();
    assertThat(shown.chars().filter(c -> Character.isISOControl(c) && c != '\n' && c != '\t'))
        .isEmpty();
    assertThat(shown).doesNotContain("\u202e").doesNotContain("\u2066").contains("\uFFFD]0;title");
    assertThat(shown).contains("\u00e9").contains("\u00b1").contains("\n").contains("\t");
  }

  @Test
  void theProgramItselfMovesTheCursor() {
    StringWriter screen = new StringWriter();
    Terminal terminal = new Terminal(screen, true);
    terminal.over("half \u001b[2J done");
    terminal.overLast(2, "a\nb\n");
    assertThat(screen.toString()).isEqualTo("\r\033[Khalf \uFFFD[2J done\033[2A\033[Ja\nb\n");
  }

  @Test
  void namesOfFilesOptionsAndCellsAreShownWithoutTheirControls() throws IOException {
    // Given: a command, a path and the cell of a table with an escape sequence in each. Expect: all
    // are told, none with its escape.
    Path evil = folder.resolve("a\u001b[31m");
    CommandLineRun path = CommandLineRun.of("analyze", evil.toString());
    CommandLineRun command = CommandLineRun.of("x\u001b[31m");
    Path motion = Files.createDirectories(folder.resolve("sub-a/ses-1/motion"));
    Files.writeString(folder.resolve("participants.tsv"), "participant_id\thandedness\nsub-a\tr\n");
    Files.writeString(
        motion.resolve("sub-a_ses-1_task-swing_tracksys-pelvis_channels.tsv"),
        "name\ttype\tunits\u001b[2J\nx\u009b1m\tACCEL\tb\u001b[2Jad\n");
    Files.writeString(
        motion.resolve("sub-a_ses-1_task-swing_tracksys-pelvis_motion.tsv"), "1\u001b]0;x\n");
    CommandLineRun cell = CommandLineRun.of("check", folder.toString());
    for (CommandLineRun run : new CommandLineRun[] {path, command, cell}) {
      assertThat(run.exitCode()).isNotZero();
      assertThat(run.err()).isNotBlank().doesNotContain("\u001b").doesNotContain("\u009b");
      assertThat(run.out()).doesNotContain("\u001b");
    }
  }
}
