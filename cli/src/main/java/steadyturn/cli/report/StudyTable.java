package steadyturn.cli.report;

import java.util.List;
import java.util.Locale;
import steadyturn.analysis.accuracy.StudyRow;

/** Rows of an accuracy study, as a Markdown table that also reads well in a terminal. */
public final class StudyTable {

  private StudyTable() {}

  /** One study under its heading. */
  public static String of(String name, String what, int lessons, List<StudyRow> rows) {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(Locale.ROOT, "### %s%n%n%s; %d lessons.%n%n", name, sentence(what), lessons));
    out.append(
        line("measure @ position", "unit", "n", "RMSE", "bias", "±", "in 95%", "must", "aim"));
    out.append(line("---", "---", "--:", "--:", "--:", "--:", "--:", "--:", "--:"));
    for (StudyRow row : rows) {
      out.append(
          line(
              row.name(),
              row.unit(),
              String.valueOf(row.n()),
              number(row.rmse()),
              number(row.bias()),
              number(row.halfWidth()),
              Double.isNaN(row.coveragePct()) ? "" : number(row.coveragePct()),
              number(row.level()) + (row.reached() ? "" : " !"),
              number(row.aim())));
    }
    return out.toString();
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static String line(String... cells) {
    return String.format(
        Locale.ROOT,
        "| %-42s | %-6s | %5s | %7s | %7s | %6s | %6s | %5s | %5s |%n",
        (Object[]) cells);
  }

  private static String number(double value) {
    if (Double.isNaN(value)) {
      return "";
    }
    double size = Math.abs(value);
    String form = size >= 3 ? "%.1f" : size >= 0.1 || size == 0 ? "%.2f" : "%.4f";
    return String.format(Locale.ROOT, form, value);
  }
}
