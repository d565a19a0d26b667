package steadyturn.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Model.ArgSpec;
import steadyturn.cli.CommandLineRun;
import steadyturn.cli.words.Words;

final class CommandsTest {

  @TempDir private static Path folder;

  private static Path archive;

  /** Given in most tests: a simulated lesson of two hits, seed 3, at 100 Hz. */
  @BeforeAll
  static void simulate() {
    archive = folder.resolve("archive");
    CommandLineRun run =
        CommandLineRun.of(
            "simulate",
            "--out",
            archive.toString(),
            "--swings",
            "2",
            "--rate",
            "100",
            "--seed",
            "3");
    assertThat(run.exitCode()).as(run.err()).isZero();
  }

  private static void isOneLine(String err) {
    assertThat(err.lines()).hasSize(1).allMatch(line -> line.startsWith("steadyturn: "));
  }

  private static Set<String> names() {
    return Commands.complete().getSubcommands().keySet();
  }

  @ParameterizedTest
  @MethodSource("names")
  void everyCommandIsListedAndExplainsItself(String command) {
    CommandLineRun help = CommandLineRun.of(command, "--help");
    assertThat(help.exitCode()).isZero();
    assertThat(help.out()).startsWith("Usage: ./steadyturn " + command);
    assertThat(help.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(CommandLineRun.of("--help").out()).contains("  " + command + " ");
  }

  @Test
  void everyPercentSignInAHelpTextIsDoubled() {
    // Given: picocli takes help texts as format strings. Expect: no single % but %n.
    Pattern single = Pattern.compile("(?<!%)%(?![%n])");
    ResourceBundle help = Words.help();
    assertThat(help.keySet()).noneMatch(key -> single.matcher(help.getString(key)).find());
  }

  @ParameterizedTest
  @MethodSource("names")
  void everyTextOfHelpIsShownAndNearlyEveryOptionHasOne(String command) {
    // Given: the texts filed under a command. Expect: the first words of each are printed. Options
    // without a text speak for themselves: --player of record, TYPE of mark, UNIT of record.
    String shown = CommandLineRun.of(command, "--help").out();
    ResourceBundle help = Words.help();
    assertThat(help.keySet())
        .filteredOn(key -> key.startsWith(command + ".") && !isOfAPart(command, key))
        .allSatisfy(key -> assertThat(shown).contains(beginning(help.getString(key))));
    Set<String> without =
        Commands.command(command).orElseThrow().getCommandSpec().args().stream()
            .filter(argument -> argument.description().length == 0)
            .map(ArgSpec::paramLabel)
            .collect(Collectors.toSet());
    assertThat(without).isSubsetOf("LABEL", "TYPE", "UNIT");
  }

  @ParameterizedTest
  @MethodSource("names")
  void noFlagIsTrueByItselfForThenItsNameWouldTurnItOff(String command) {
    // Given: a terminal, where record once took typing for granted by a flag that was true, so that
    // --typed turned it off (picocli turns a flag round). Expect: every flag begins as false.
    String terminal = "steadyturn.typed";
    Optional<String> was = Optional.ofNullable(System.getProperty(terminal));
    System.setProperty(terminal, "true");
    try {
      assertThat(Commands.command(command).orElseThrow().getCommandSpec().options())
          .filteredOn(o -> o.type() == boolean.class && !o.usageHelp())
          .allMatch(o -> Boolean.FALSE.equals(o.initialValue()));
    } finally {
      was.ifPresentOrElse(
          w -> System.setProperty(terminal, w), () -> System.clearProperty(terminal));
    }
  }

  /** Such as {@code units new}, which explains itself under its own name. */
  private static boolean isOfAPart(String command, String key) {
    return Commands.command(command).orElseThrow().getSubcommands().keySet().stream()
        .anyMatch(part -> key.startsWith(command + "." + part + "."));
  }

  private static String beginning(String text) {
    int words = Math.min(text.length(), 24);
    return text.contains("${") ? "" : text.substring(0, words).replace("%%", "%");
  }

  @Test
  void wrongUsageIsOneLineAndCodeTwo() {
    for (List<String> args :
        List.of(
            List.<String>of(),
            List.of("fly"),
            List.of("analyze"),
            List.of("analyze", "x", "--format", "sheet"),
            List.of("simulate", "--out", "x", "--handed", "both"),
            List.of("simulate", "--out", "x", "--swings", "0"))) {
      CommandLineRun run = CommandLineRun.of(args.toArray(String[]::new));
      assertThat(run.exitCode()).as(args.toString()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      isOneLine(run.err());
    }
  }

  @Test
  void aPathThatIsNotThereIsOneLineAndCodeOne() {
    CommandLineRun run = CommandLineRun.of("analyze", folder.resolve("nothing").toString());
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.out()).isEmpty();
    isOneLine(run.err());
    assertThat(run.err()).contains("nothing");
  }

  @Test
  void verboseAddsWhereInTheProgram() {
    String nothing = folder.resolve("nothing").toString();
    assertThat(CommandLineRun.of("check", nothing, "--verbose").err()).contains("\tat steadyturn.");
  }

  @Test
  void aBrokenRecordingIsReportedAndTheRestGoesOn() throws IOException {
    // Given: a second player whose pelvis table holds no bytes, in front of the good lesson.
    Path broken = folder.resolve("broken");
    CommandLineRun.of(
        "simulate", "--out", broken.toString(), "--swings", "1", "--rate", "100", "--player", "a1");
    try (var files = Files.walk(broken)) {
      for (Path table : files.filter(f -> f.toString().endsWith("_motion.tsv")).toList()) {
        Files.write(table, new byte[0]);
      }
    }
    CommandLineRun run =
        CommandLineRun.of("analyze", broken.toString(), archive.toString(), "--format", "tsv");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err()).contains("sub-a1");
    assertThat(run.out()).contains("sub-p01_ses-simulated_task-swing");
  }

  @Test
  void resultsGoIntoDerivativesWhereAsked() {
    CommandLineRun run =
        CommandLineRun.of("analyze", archive.toString(), "--out", archive.toString());
    assertThat(run.exitCode()).isZero();
    assertThat(
            archive.resolve(
                "derivatives/steadyturn/sub-p01/ses-simulated/motion/"
                    + "sub-p01_ses-simulated_task-swing_measures.tsv"))
        .exists();
    assertThat(CommandLineRun.of("analyze", archive.toString()).out())
        .as("derivatives are not taken for recordings")
        .isEqualTo(run.out());
  }

  @Test
  void theSameSeedGivesTheSameFiles() throws IOException {
    Path again = folder.resolve("again");
    CommandLineRun.of(
        "simulate", "--out", again.toString(), "--swings", "2", "--rate", "100", "--seed", "3");
    String table =
        "sub-p01/ses-simulated/motion/sub-p01_ses-simulated_task-swing_tracksys-pelvis_motion.tsv";
    assertThat(again.resolve(table)).hasSameBinaryContentAs(archive.resolve(table));
  }

  @Test
  void anImportedTableIsTheSameRecordingAgain() throws IOException {
    // Given: the hand unit of the simulated lesson as a table with a header and degrees per second.
    // Expect: the import accepts it, and a second import becomes a run of its own.
    Path table = folder.resolve("hand.csv");
    Path hand;
    try (var files = Files.walk(archive)) {
      hand =
          files
              .filter(f -> f.toString().endsWith("tracksys-leadHand_motion.tsv"))
              .findFirst()
              .orElseThrow();
    }
    StringBuilder csv = new StringBuilder("t,ax,ay,az,gx,gy,gz\n");
    for (String line : Files.readAllLines(hand)) {
      String[] cells = line.split("\t", -1);
      for (int c = 4; c < 7; c++) {
        cells[c] = String.valueOf(Math.toDegrees(Double.parseDouble(cells[c])));
      }
      csv.append(String.join(",", cells)).append('\n');
    }
    Files.writeString(table, csv);
    Path map = folder.resolve("hand.toml");
    Files.writeString(map, MAP);
    Path into = folder.resolve("imported");
    String[] args = {
      "import",
      "--unchecked",
      "--map",
      map.toString(),
      "--player",
      "a1",
      "--out",
      into.toString(),
      table.toString()
    };
    CommandLineRun first = CommandLineRun.of(args);
    assertThat(first.exitCode()).as(first.err()).isZero();
    assertThat(first.out()).contains("sub-a1_ses-01_task-swing: lead hand");
    assertThat(CommandLineRun.of(args).out())
        .contains("sub-a1_ses-01_task-swing_run-01: lead hand");

    Files.writeString(map, MAP.replace("deg/s", "rad/s"));
    CommandLineRun wrong = CommandLineRun.of(args);
    assertThat(wrong.exitCode()).isEqualTo(1);
    isOneLine(wrong.err());
    assertThat(wrong.err()).contains("gyro_unit is likely deg/s");
  }

  private static final String MAP =
      """
      [table]
      delimiter = ","
      header_lines = 1

      [time]
      column = "t"
      unit = "s"

      [[unit]]
      point = "lead_hand"
      accel = ["ax", "ay", "az"]
      accel_unit = "m/s^2"
      gyro = ["gx", "gy", "gz"]
      gyro_unit = "deg/s"
      """;

  @Test
  void checkGivesAVerdictForEachUnit() {
    CommandLineRun run = CommandLineRun.of("check", archive.toString());
    assertThat(run.out()).contains("pelvis ", "lead forearm ", "lead hand ", "fit for use");
  }

  @Test
  void theCompletionScriptKnowsEveryCommand() {
    assertThat(CommandLineRun.of("completion").out()).contains("analyze", "simulate", "--handed");
  }
}
