package steadyturn.cli.output.table;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import steadyturn.cli.output.PlainWords;
import steadyturn.ingest.quality.Finding;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitReport;
import steadyturn.ingest.quality.Verdict;
import steadyturn.ingest.words.Words;

/** Whether the units of a recording can be used, for people: a verdict a unit and what to do. */
public final class QualityReport {

  private static final int NAME_WIDTH = 16;

  private QualityReport() {}

  /** Writes one recording's report; leaves the writer open. */
  public static void write(RecordingReport report, Writer to) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("Recording " + report.recordingId());
    for (UnitReport unit : report.units()) {
      lines.addAll(unit(unit));
    }
    if (report.units().isEmpty()) {
      lines.add("  " + Words.say("check.no-unit"));
    }
    for (String line : lines) {
      to.write(line + "\n");
    }
  }

  private static List<String> unit(UnitReport unit) {
    String name = "  " + PlainWords.bodyPoint(unit.facts().point());
    String figures =
        String.format(
            Locale.ROOT,
            "%s (%.1f Hz, %.2f %% lost%s)",
            unit.verdict().words(),
            unit.rateHz(),
            unit.lostPct(),
            unit.saturatedSamples() == 0
                ? ""
                : ", " + Words.say("table.beyond-range", unit.saturatedSamples()));
    List<String> lines = new ArrayList<>(Layout.beside(name, NAME_WIDTH, figures));
    for (Finding finding : unit.findings()) {
      String sign = finding.verdict() == Verdict.FIT ? "    note" : "    !";
      lines.addAll(Layout.beside(sign, NAME_WIDTH, finding.what() + " " + finding.whatToDo()));
    }
    return lines;
  }
}
