package steadyturn.cli.report;

import java.util.ArrayList;
import java.util.List;

/** What must stand beside the numbers: how to read them, what they cannot say, and safety. */
public final class Cautions {

  private static final String CANNOT_TELL =
      "What this cannot tell you: weight, ground force, club path, ball flight. The units measure how"
          + " the body moves. Where the pelvis is over the feet is a tendency, not a weight.";

  private static final String SAFETY =
      "Before anyone acts on it: warm up, begin with half swings, stop at pain. It predicts no injury"
          + " and replaces no qualified teacher or clinician (README, Safety).";

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
    lines.addAll(
        explained(
            "turn, slide", "of the pelvis since address: + towards the target, - away from it"));
    if (shows(columns, "pivot mm")) {
      lines.addAll(
          explained(
              "pivot",
              "the point the pelvis turned about, mm towards the target from the place of its centre"
                  + " at address"));
    }
    if (shows(columns, "ms")) {
      lines.addAll(explained("release", "when the wrists let go, ms before impact"));
    }
    if (shows(columns, "ratio")) {
      lines.addAll(explained("tempo", "time of the backswing over time of the downswing"));
    }
    lines.addAll(
        explained(
            "±, ~, -",
            "the true value lies within ± in 95 of 100 cases; ~ estimated, - withheld: reasons"
                + " above"));
    lines.addAll(explained("spread", "standard deviation between the swings of a group"));
    return lines;
  }

  private static List<String> explained(String name, String words) {
    return Layout.beside(name, TableReport.NAME_WIDTH, words);
  }

  private static boolean shows(List<Column> columns, String head) {
    return columns.stream().anyMatch(c -> c.head().equals(head));
  }
}
