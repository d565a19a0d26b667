package steadyturn.cli.output.table;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/** What must stand beside the numbers: how to read them, what they cannot say, and safety. */
public final class Cautions {

  private static final String CANNOT_TELL = Words.say("table.cannot-tell");

  private static final String SAFETY = Words.say("table.safety");

  private Cautions() {}

  /** The closing lines of every printed result. */
  public static List<String> afterATable() {
    List<String> lines = new ArrayList<>(Layout.wrapped(CANNOT_TELL, Layout.WIDTH));
    lines.addAll(Layout.wrapped(SAFETY, Layout.WIDTH));
    return lines;
  }

  /** Explains the columns that are shown. */
  static List<String> howToRead(List<Column> columns) {
    List<String> lines = new ArrayList<>();
    lines.addAll(explained(Words.say("table.read.turn.name"), Words.say("table.read.turn")));
    if (shows(columns, Measure.PELVIS_CENTRE_ALONG)) {
      lines.addAll(explained(Words.say("table.read.pivot.name"), Words.say("table.read.pivot")));
    }
    if (shows(columns, Measure.WRIST_RELEASE)) {
      lines.addAll(
          explained(Words.say("table.read.release.name"), Words.say("table.read.release")));
    }
    if (shows(columns, Measure.TEMPO_RATIO)) {
      lines.addAll(explained(Words.say("table.read.tempo.name"), Words.say("table.read.tempo")));
    }
    lines.addAll(explained("±, ~, -", Words.say("table.read.range")));
    lines.addAll(explained(Words.say("table.read.spread.name"), Words.say("table.read.spread")));
    return lines;
  }

  private static List<String> explained(String name, String words) {
    return Layout.beside(name, TableReport.NAME_WIDTH, words);
  }

  private static boolean shows(List<Column> columns, Measure measure) {
    return columns.stream().anyMatch(c -> c.measure() == measure);
  }
}
