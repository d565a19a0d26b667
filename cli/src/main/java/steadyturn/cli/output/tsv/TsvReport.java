package steadyturn.cli.output.tsv;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.table.CellText;

/**
 * The result for spreadsheets and statistics: one row a value, tab-separated, with a header; what
 * is not there is {@code n/a}.
 */
public final class TsvReport {

  public static final List<String> COLUMNS =
      List.of(
          "recording,player,swing,club,kind,flags,measure,at,value,unit,low,high,grade,why"
              .split(",", -1));

  private TsvReport() {}

  /** Writes header and rows; leaves the writer open. */
  public static void write(List<LessonResult> results, Writer to) throws IOException {
    row(to, COLUMNS.toArray());
    for (LessonResult result : results) {
      for (SwingResult swing : result.swings()) {
        for (MeasureValue value : swing.measures()) {
          row(to, cells(result, swing, value));
        }
      }
    }
  }

  private static Object[] cells(LessonResult result, SwingResult swing, MeasureValue value) {
    return new Object[] {
      result.recording(),
      result.player().id(),
      swing.number(),
      swing.club(),
      swing.kind().word(),
      String.join(",", swing.flags()),
      value.measure().id(),
      value.at(),
      Decimals.cell(value.value(), Decimals.OF_VALUE),
      value.measure().unit(),
      Decimals.cell(value.low(), Decimals.OF_VALUE),
      Decimals.cell(value.high(), Decimals.OF_VALUE),
      value.grade().word(),
      Words.english().text(value.why())
    };
  }

  /** One line; empty cells become {@code n/a}, and none holds what a spreadsheet would run. */
  public static void row(Writer to, Object... cells) throws IOException {
    String line =
        Arrays.stream(cells)
            .map(String::valueOf)
            .map(cell -> cell.isBlank() ? "n/a" : CellText.written(cell))
            .collect(Collectors.joining("\t"));
    to.write(line + "\n");
  }
}
