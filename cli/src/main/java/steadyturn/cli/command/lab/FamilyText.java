package steadyturn.cli.command.lab;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.study.FamilyRow;
import steadyturn.analysis.lab.study.FamilyTable;

/** Tables by families, as Markdown that also reads well in a terminal. */
final class FamilyText {

  private FamilyText() {}

  /** One family under its heading. */
  static String of(FamilyTable table) {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(
            Locale.ROOT,
            "### %s%n%n%s; %d lessons. Swings found: %.1f %% of %d; taken for swings: %d. Flags: %s.%n%n",
            table.situation().word(),
            StudyTable.sentence(table.situation().what()),
            table.lessons(),
            table.foundPct(),
            table.swings(),
            table.taken(),
            flags(table.flagsPct())));
    out.append(
        line(
            "value @ position",
            "unit",
            "n",
            "withheld",
            "RMSE",
            "bias",
            "±",
            "±/RMSE",
            "in 95%",
            "seed"));
    out.append(line("---", "---", "--:", "--:", "--:", "--:", "--:", "--:", "--:", "--:"));
    table.rows().forEach(row -> out.append(line(row)));
    return out.toString();
  }

  private static String flags(Map<String, Double> flagsPct) {
    return flagsPct.isEmpty()
        ? "none"
        : flagsPct.entrySet().stream()
            .map(e -> String.format(Locale.ROOT, "%s %.0f %%", e.getKey(), e.getValue()))
            .collect(Collectors.joining(", "));
  }

  private static String line(FamilyRow row) {
    boolean small = row.rmse() > 0 && row.rmse() < 0.1;
    return line(
        row.name(),
        row.unit(),
        String.valueOf(row.of()),
        StudyTable.number(row.withheldPct(), false),
        StudyTable.number(row.rmse(), small),
        StudyTable.number(row.bias(), small),
        StudyTable.number(row.halfWidth(), small),
        StudyTable.number(row.widthInErrors(), false),
        StudyTable.number(row.coveragePct(), false) + (row.isHonest() ? "" : " !"),
        String.valueOf(row.worstSeed()));
  }

  private static String line(String... cells) {
    return String.format(
        Locale.ROOT,
        "| %-42s | %-6s | %5s | %8s | %7s | %7s | %6s | %6s | %7s | %5s |%n",
        (Object[]) cells);
  }

  /** All families together. */
  static String summary(Half half, List<FamilyTable> tables) {
    StringBuilder out = new StringBuilder();
    int cells = tables.stream().mapToInt(t -> t.rows().size()).sum();
    out.append(
        String.format(
            Locale.ROOT,
            "Families for %s: the intervals of %.1f %% of %d cells hold in 90 to 99 %%.",
            half.word(),
            FamilyTable.honestPct(tables),
            cells));
    tables.stream()
        .filter(t -> t.worst().isPresent())
        .min(Comparator.comparingDouble(t -> t.worst().orElseThrow().coveragePct()))
        .ifPresent(t -> out.append(worst(t, t.worst().orElseThrow())));
    return out.append(System.lineSeparator()).toString();
  }

  private static String worst(FamilyTable table, FamilyRow row) {
    return String.format(
        Locale.ROOT,
        " Worst: %s in %s, %.1f %%.",
        row.name(),
        table.situation().word(),
        row.coveragePct());
  }

  /** Whether a family keeps what is asked: swings found, intervals that hold. */
  static boolean reached(FamilyTable table) {
    return table.foundPct() >= 99
        && table.taken() == 0
        && table.rows().stream().allMatch(FamilyRow::isHonest);
  }
}
