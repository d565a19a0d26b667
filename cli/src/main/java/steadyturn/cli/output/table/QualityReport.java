package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.lesson.Notice;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;
import steadyturn.ingest.quality.Finding;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitReport;
import steadyturn.ingest.quality.Verdict;

/** Whether the units of a recording can be used, for people: a verdict a unit and what to do. */
public final class QualityReport {

  private static final int NAME_WIDTH = 16;

  private QualityReport() {}

  /**
   * Writes one recording's report; leaves the writer open.
   *
   * @param impossible what is refused besides, of how the units are worn and of the player
   * @param showsSwings whether a swing was found: only swings tell which unit is where, and how
   */
  public static void write(
      RecordingReport report, List<Notice> impossible, boolean showsSwings, Writer to)
      throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(say("table.recording") + " " + report.recordingId());
    for (UnitReport unit : report.units()) {
      lines.addAll(unit(unit));
    }
    Words.inUse()
        .told(impossible)
        .keySet()
        .forEach(sentence -> lines.addAll(Layout.beside("    !", NAME_WIDTH, sentence)));
    if (report.units().isEmpty()) {
      lines.add("  " + say("check.no-unit"));
    } else if (!showsSwings) {
      lines.addAll(Layout.beside("    note", NAME_WIDTH, say("check.no-swing")));
    }
    Layout.write(lines, to);
  }

  private static List<String> unit(UnitReport unit) {
    String name = "  " + PlainWords.bodyPoint(unit.facts().point());
    String figures =
        say(
            "check.figures",
            say("quality.verdict." + unit.verdict().word()),
            unit.rateHz(),
            unit.lostPct(),
            unit.saturatedSamples() == 0
                ? ""
                : ", " + Words.inUse().counted("table.beyond-range", unit.saturatedSamples()));
    List<String> lines = new ArrayList<>(Layout.beside(name, NAME_WIDTH, figures));
    for (Finding finding : unit.findings()) {
      String sign = finding.verdict() == Verdict.FIT ? "    note" : "    !";
      lines.addAll(Layout.beside(sign, NAME_WIDTH, Words.inUse().advice(finding.what())));
    }
    return lines;
  }
}
