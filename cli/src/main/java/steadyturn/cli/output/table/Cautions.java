package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Measure;

/** What must stand beside the numbers: how to read them, what they cannot say, and safety. */
public final class Cautions {

  private Cautions() {}

  /** The closing lines of every printed result. */
  public static List<String> afterATable() {
    return Stream.of("table.cannot-tell", "table.safety")
        .flatMap(key -> Layout.wrapped(say(key), Layout.WIDTH).stream())
        .toList();
  }

  /** Explains the columns that are shown. */
  static List<String> howToRead(List<Column> columns) {
    List<String> lines = new ArrayList<>(explained("turn"));
    if (shows(columns, Measure.PELVIS_CENTRE_ALONG)) {
      lines.addAll(explained("pivot"));
    }
    if (shows(columns, Measure.WRIST_RELEASE)) {
      lines.addAll(explained("release"));
    }
    if (shows(columns, Measure.TEMPO_RATIO)) {
      lines.addAll(explained("tempo"));
    }
    lines.addAll(explained("range"));
    lines.addAll(explained("spread"));
    return lines;
  }

  private static List<String> explained(String what) {
    String key = "table.read." + what;
    return Layout.beside(say(key + ".name"), TableReport.NAME_WIDTH, say(key));
  }

  private static boolean shows(List<Column> columns, Measure measure) {
    return columns.stream().anyMatch(c -> c.measure() == measure);
  }
}
