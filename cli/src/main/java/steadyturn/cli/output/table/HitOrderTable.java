package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import steadyturn.analysis.compare.HitOrder;
import steadyturn.cli.terminal.Wrapping;

/** The order in which to hit clubs, to be printed and laid on the mat. */
public final class HitOrderTable {

  private HitOrderTable() {}

  /** Writes a line a round and why; leaves the writer open. */
  public static void write(HitOrder order, Writer to) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(say("plan.title", order.ballsEach()));
    lines.add("");
    IntStream.range(0, order.rounds().size())
        .forEach(
            round -> {
              String name = "  " + say("plan.round", round + 1);
              lines.addAll(Layout.beside(name, 12, stints(order.rounds().get(round))));
            });
    lines.add("");
    lines.addAll(Wrapping.wrapped(say("plan.why"), Layout.WIDTH));
    lines.add(say("plan.note"));
    order.rounds().get(0).forEach(stint -> lines.add("  club \"" + stint.club() + "\""));
    Layout.write(lines, to);
  }

  private static String stints(List<HitOrder.Stint> stints) {
    return stints.stream()
        .map(stint -> say("plan.stint", stint.balls(), stint.club()))
        .collect(Collectors.joining(", "));
  }
}
