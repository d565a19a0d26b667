package steadyturn.cli.command.lab;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.lab.study.DropoutRow;
import steadyturn.analysis.lab.study.DropoutStudy;

/** What dropouts did to lessons, as a Markdown table and the worst cases below it. */
public final class DropoutTable {

  private static final String HEAD =
      "length,cases,values,moved,in silence,missed %,touched,withheld,for nothing,wider,for nothing,"
          + "elsewhere,swings lost";

  private DropoutTable() {}

  /** The whole of it, with what each column means. */
  public static String of(DropoutStudy.Findings findings) {
    StringBuilder out = new StringBuilder("### dropouts\n\n");
    out.append(line((Object[]) HEAD.split(",", -1)));
    out.append(
        line(Stream.concat(Stream.of("---"), Stream.generate(() -> "--:").limit(12)).toArray()));
    findings.rows().forEach(row -> out.append(line(row)));
    out.append(
        """

        moved: by more than the half-width of the value without the dropout; in silence: so, and
        neither wider, graded worse nor flagged; missed: given, and its interval does not hold that
        value; touched: values that lose samples they can need, and of those how many are withheld
        and how many times wider the others are (median); for nothing: withheld, or wider by half,
        though they lose none; elsewhere: values of other swings that moved by more than half of
        their half-width; swings lost + said nowhere + whole + invented + lessons without result.
        """);
    if (!findings.worst().isEmpty()) {
      out.append("\nWorst:\n");
      findings.worst().forEach(w -> out.append("- ").append(w).append('\n'));
    }
    return out.toString();
  }

  private static String line(DropoutRow row) {
    return line(
        row.name(),
        row.cases(),
        row.values(),
        row.moved(),
        row.inSilence(),
        String.format(Locale.ROOT, "%.2f", row.missedPct()),
        row.needed(),
        row.withheld(),
        row.withheldForNothing(),
        String.format(Locale.ROOT, "%.2f", row.widened()),
        row.widenedForNothing(),
        row.elsewhere(),
        lost(row));
  }

  private static String lost(DropoutRow row) {
    return Stream.of(
            row.swingsLost(),
            row.lostInSilence(),
            row.lostForNothing(),
            row.swingsInvented(),
            row.failures())
        .map(String::valueOf)
        .collect(Collectors.joining(" + "));
  }

  private static String line(Object... cells) {
    return String.format(
        Locale.ROOT,
        "| %-17s | %5s | %6s | %5s | %10s | %8s | %7s | %8s | %11s | %6s | %11s | %9s | %17s |%n",
        cells);
  }
}
