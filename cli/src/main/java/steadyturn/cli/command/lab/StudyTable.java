package steadyturn.cli.command.lab;

import java.util.List;
import java.util.Locale;
import steadyturn.analysis.lab.study.StudyRow;

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
      boolean small = row.rmse() > 0 && row.rmse() < 0.1;
      out.append(
          line(
              row.name(),
              row.unit(),
              String.valueOf(row.n()),
              number(row.rmse(), small),
              number(row.bias(), small),
              number(row.halfWidth(), small),
              Double.isNaN(row.coveragePct()) ? "" : number(row.coveragePct(), false),
              number(row.level(), small) + (row.reached() ? "" : " !"),
              number(row.aim(), small)));
    }
    return out.toString();
  }

  static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static String line(String... cells) {
    return String.format(
        Locale.ROOT,
        "| %-42s | %-6s | %5s | %7s | %7s | %6s | %6s | %5s | %5s |%n",
        (Object[]) cells);
  }

  /**
   * A figure as short as it says something.
   *
   * @param small whether the row is one of small figures, such as times in s
   */
  static String number(double value, boolean small) {
    if (Double.isNaN(value)) {
      return "";
    }
    String form = Math.abs(value) >= 3 ? "%.1f" : small ? "%.4f" : "%.2f";
    return String.format(Locale.ROOT, form, value);
  }
}
