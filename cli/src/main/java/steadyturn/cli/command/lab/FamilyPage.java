package steadyturn.cli.command.lab;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.study.FamilyRow;
import steadyturn.analysis.lab.study.FamilyTable;

/** What a page says of a half: its cells counted, a few of them by family, and the worst. */
final class FamilyPage {

  private static final double WIDE = 2.5;
  private static final double TOO_SURE_PCT = 87;
  private static final int WORST = 8;
  private static final List<String> SHOWN =
      List.of(
          "pelvis.turn @ top",
          "pelvis.slide @ top",
          "pelvis.slide @ impact",
          "time @ takeaway",
          "time @ impact",
          "wrist.cock @ impact",
          "wrist.flexion @ top");

  private FamilyPage() {}

  /** The part of a page about one half; empty where it was not run. */
  static String of(Half half, List<FamilyTable> tables) {
    if (tables.isEmpty()) {
      return "";
    }
    StringBuilder out = new StringBuilder();
    out.append("### Families for ").append(half.word()).append("\n\n");
    out.append(counted(tables)).append("\n\n");
    out.append("| family | ").append(String.join(" | ", SHOWN)).append(" |\n|---");
    out.append("|---".repeat(SHOWN.size())).append("|\n");
    tables.forEach(t -> out.append(line(t)));
    out.append("\nHold least often: ").append(worst(tables)).append(".\n\n");
    return out.toString();
  }

  private static String counted(List<FamilyTable> tables) {
    List<FamilyRow> cells = tables.stream().flatMap(t -> t.rows().stream()).toList();
    FamilyTable least =
        tables.stream().min(Comparator.comparingDouble(FamilyTable::foundPct)).orElseThrow();
    return String.format(
        Locale.ROOT,
        "%d lessons a family. Swings found: %.1f %% or more; other movements taken for swings: %d."
            + " Of %d cells (a value at a position in a family)%n"
            + "%.1f %% hold in 90 to 99 %%, %.1f %% more often, %.1f %% in less than 90, %.1f %% in"
            + " less than 87; %.1f %% are wider (half) than 2.5 RMSE.%n"
            + "Withheld of a value at most: %.1f %% in %s, %.1f %% in the others.",
        tables.get(0).lessons(),
        least.foundPct(),
        tables.stream().mapToInt(FamilyTable::taken).sum(),
        cells.size(),
        part(cells, FamilyRow::isHonest),
        part(cells, r -> r.coveragePct() > FamilyRow.MOST_PCT),
        part(cells, r -> r.coveragePct() < FamilyRow.LEAST_PCT),
        part(cells, r -> r.coveragePct() < TOO_SURE_PCT),
        part(cells, r -> r.widthInErrors() > WIDE),
        withheld(tables, t -> t.situation() == Situation.STANDARD),
        Situation.STANDARD.word(),
        withheld(tables, t -> t.situation() != Situation.STANDARD));
  }

  private static double part(List<FamilyRow> cells, Predicate<FamilyRow> which) {
    return 100.0 * cells.stream().filter(which).count() / cells.size();
  }

  private static double withheld(List<FamilyTable> tables, Predicate<FamilyTable> which) {
    return tables.stream()
        .filter(which)
        .flatMap(t -> t.rows().stream())
        .mapToDouble(FamilyRow::withheldPct)
        .max()
        .orElse(0);
  }

  private static String line(FamilyTable table) {
    return "| "
        + table.situation().word()
        + " | "
        + SHOWN.stream().map(name -> cell(table, name)).collect(Collectors.joining(" | "))
        + " |\n";
  }

  private static String cell(FamilyTable table, String name) {
    return table.rows().stream()
        .filter(r -> r.name().equals(name))
        .findFirst()
        .map(FamilyPage::cell)
        .orElse("");
  }

  /** Error, half width and how often it held, in bold where that is too seldom. */
  private static String cell(FamilyRow row) {
    String mark = row.coveragePct() < TOO_SURE_PCT ? "**" : "";
    return String.format(
        Locale.ROOT,
        "%s%s ± %s %s, %.0f %%%s",
        mark,
        StudyTable.number(row.rmse(), false),
        StudyTable.number(row.halfWidth(), false),
        row.unit(),
        row.coveragePct(),
        mark);
  }

  private static String worst(List<FamilyTable> tables) {
    record Cell(FamilyTable table, FamilyRow row) {}
    return tables.stream()
        .flatMap(t -> t.rows().stream().map(r -> new Cell(t, r)))
        .sorted(Comparator.comparingDouble(c -> c.row().coveragePct()))
        .limit(WORST)
        .map(
            c ->
                String.format(
                    Locale.ROOT,
                    "%s in %s %.1f %%",
                    c.row().name(),
                    c.table().situation().word(),
                    c.row().coveragePct()))
        .collect(Collectors.joining(", "));
  }
}
