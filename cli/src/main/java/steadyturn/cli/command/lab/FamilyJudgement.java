package steadyturn.cli.command.lab;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.study.FamilyStudy;
import steadyturn.analysis.lab.study.FamilyTable;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;

/** Runs the families of one half through the analysis and counts how often the judging half was. */
final class FamilyJudgement {

  private final Console console;
  private final Half half;
  private final Path count;

  /**
   * Prepares a run.
   *
   * @param count page that counts the runs of the judging half; it must be there for these
   */
  FamilyJudgement(Console console, Half half, Path count) {
    this.console = console;
    this.half = half;
    this.count = count;
  }

  /** What came out, family by family. */
  record Outcome(List<FamilyTable> tables, int exitCode) {}

  Outcome run(Optional<String> only, int lessons, long seed) throws IOException {
    List<Situation> situations = situations(only);
    if (half == Half.JUDGING && !Files.exists(count)) {
      throw console.wrongUsage(
          "the judging half counts its runs in " + count + ", which is not there; see --count");
    }
    Progress progress = console.progress(situations.size() * lessons);
    List<FamilyTable> tables = new ArrayList<>();
    for (Situation situation : situations) {
      FamilyTable table =
          FamilyStudy.run(situation, half, lessons, seed, () -> progress.step(situation.word()));
      progress.clear();
      tables.add(table);
      show(FamilyText.of(table));
    }
    show(FamilyText.summary(half, tables));
    if (half == Half.JUDGING) {
      show(counted(lessons, seed, tables));
    }
    return new Outcome(
        tables, tables.stream().allMatch(FamilyText::reached) ? Failures.DONE : Failures.FAILED);
  }

  private void show(String text) {
    console.out().println(text);
    console.out().flush();
  }

  private List<Situation> situations(Optional<String> only) {
    List<Situation> out =
        Stream.of(Situation.values())
            .filter(s -> only.isEmpty() || s.word().equals(only.get()))
            .toList();
    if (out.isEmpty()) {
      throw console.wrongUsage(
          "there is no family \""
              + only.orElse("")
              + "\"; there are "
              + Stream.of(Situation.values())
                  .map(Situation::word)
                  .collect(Collectors.joining(", ")));
    }
    return out;
  }

  /** Adds a line to the page of runs and gives how many there are. */
  private String counted(int lessons, long seed, List<FamilyTable> tables) throws IOException {
    String line =
        String.format(
            Locale.ROOT,
            "| %s | %d | %d | %.1f |%n",
            tables.size() == Situation.values().length ? "all" : tables.get(0).situation().word(),
            lessons,
            seed,
            FamilyTable.honestPct(tables));
    Files.writeString(count, line, UTF_8, StandardOpenOption.APPEND);
    long runs =
        Files.readAllLines(count, UTF_8).stream()
            .filter(l -> l.matches("\\| [a-z].*\\d.*"))
            .count();
    return "The judging half has been run " + runs + " times (" + count + ").";
  }
}
