package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.terminal.Wrapping;

/** What must stand beside the numbers: how to read them, what they cannot say, and safety. */
public final class Cautions {

  private Cautions() {}

  /** The closing lines of every printed result. */
  public static List<String> afterATable() {
    return Stream.of("table.cannot-tell", "table.safety")
        .flatMap(key -> Wrapping.wrapped(say(key), Layout.WIDTH).stream())
        .toList();
  }

  /** Explains what is shown, and nothing else. */
  static List<String> howToRead(LessonTable table) {
    List<String> lines = new ArrayList<>();
    explain(lines, "turn", table.shows(Measure.PELVIS_TURN));
    explain(lines, "pivot", table.shows(Measure.PELVIS_CENTRE_DISTANCE));
    explain(lines, "release", table.shows(Measure.WRIST_RELEASE));
    explain(lines, "tempo", table.shows(Measure.TEMPO_RATIO));
    explain(lines, "range", true);
    explain(lines, "estimated", table.shows(Grade.ESTIMATED));
    explain(lines, "spread", table.hasMeans());
    return lines;
  }

  private static void explain(List<String> lines, String what, boolean isShown) {
    if (isShown) {
      String key = "table.read." + what;
      lines.addAll(Layout.beside(say(key + ".name"), TableReport.NAME_WIDTH, say(key)));
    }
  }
}
