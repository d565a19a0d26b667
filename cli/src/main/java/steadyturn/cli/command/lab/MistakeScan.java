package steadyturn.cli.command.lab;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lab.mistake.Mistake;
import steadyturn.analysis.lab.mistake.MistakeRow;
import steadyturn.analysis.lab.mistake.MistakeStudy;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Progress;

/** Does every mistake to simulated lessons and prints how often it is called by its name. */
record MistakeScan(Console console) {

  private static final int SEEDS_SHOWN = 8;

  /** What was printed, for a page. */
  record Printed(String table, int exitCode) {}

  Printed run(int lessons, long seed, Set<Mistake> only) {
    Progress progress = console.progress(lessons);
    List<MistakeRow> rows = MistakeStudy.run(lessons, seed, only, () -> progress.step("mistakes"));
    progress.clear();
    String table = table(lessons, seed, rows);
    console.out().print(table);
    console.out().flush();
    boolean reached = rows.stream().allMatch(row -> row.isNamed() && row.isHonest());
    return new Printed(table, reached ? Failures.DONE : Failures.FAILED);
  }

  /** The mistakes of a name; all where none is given. */
  static Set<Mistake> named(Stream<String> words) {
    return words
        .flatMap(word -> Stream.of(Mistake.values()).filter(m -> m.word().equals(word)))
        .collect(Collectors.toSet());
  }

  private static String table(int lessons, long seed, List<MistakeRow> rows) {
    StringBuilder out = new StringBuilder();
    out.append(line("mistake", "named", "values given", "missed", "not named in seeds"));
    out.append(line("---", "--:", "--:", "--:", "---"));
    rows.forEach(row -> out.append(line(row)));
    List<MistakeRow> wrong = rows.stream().filter(row -> !row.isSound()).toList();
    long named = wrong.stream().filter(MistakeRow::isNamed).count();
    long honest = wrong.stream().filter(MistakeRow::isHonest).count();
    out.append(
        String.format(
            Locale.ROOT,
            "%n%d lessons a mistake, seeds %d to %d. %d of %d kinds are named in at least 95 %% of"
                + " the lessons; of%n%d kinds at most 5 %% of the values still given miss the"
                + " truth.%n",
            lessons,
            seed,
            seed + lessons - 1,
            named,
            wrong.size(),
            honest));
    return out.toString();
  }

  private static String line(MistakeRow row) {
    String seeds =
        row.unnamed().stream()
            .limit(SEEDS_SHOWN)
            .map(String::valueOf)
            .collect(Collectors.joining(" "));
    return line(
        row.name(),
        String.format(Locale.ROOT, "%d of %d", row.named(), row.lessons()),
        String.valueOf(row.values()),
        row.values() == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", row.missedPct()),
        seeds + (row.unnamed().size() > SEEDS_SHOWN ? " ..." : ""));
  }

  private static String line(String... cells) {
    return String.format(Locale.ROOT, "| %-29s | %10s | %12s | %7s | %-20s |%n", (Object[]) cells);
  }
}
