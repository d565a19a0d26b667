package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.terminal.Wrapping;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

/** The result for people: at most 80 columns wide, in the words of a teacher. */
public final class TableReport {

  /** Columns left for the names at the left edge. */
  static final int NAME_WIDTH = 14;

  private TableReport() {}

  /** What stands above and below the recordings of one lesson. */
  public record Told(WorkOn workOn, List<DrillScore> drills) {

    public Told {
      drills = List.copyOf(drills);
    }
  }

  /**
   * Writes what to work on, then one recording after the other, then how the drills went; leaves
   * the writer open.
   *
   * @param told of each lesson, by its name
   * @param everySwing also everything known of each single swing
   */
  public static void write(
      List<LessonResult> results, Map<String, Told> told, boolean everySwing, Writer to)
      throws IOException {
    List<String> lines = new ArrayList<>();
    told.forEach(
        (lesson, of) -> {
          if (told.size() > 1) {
            lines.add(say("page.lesson", lesson));
          }
          lines.addAll(of.workOn.lines());
          lines.add("");
        });
    for (LessonResult result : results) {
      lines.addAll(head(result, everySwing));
      lines.add("");
      lines.addAll(body(result, everySwing));
      lines.add("");
    }
    told.forEach(
        (lesson, of) -> {
          if (!of.drills.isEmpty()) {
            lines.add(say("drills.title", lesson));
            lines.addAll(DrillTable.lines(of.drills));
          }
        });
    lines.addAll(Cautions.afterATable());
    Layout.write(lines, to);
  }

  private static List<String> head(LessonResult result, boolean details) {
    List<String> lines = new ArrayList<>();
    lines.addAll(named(say("table.recording"), result.recording()));
    if (details) {
      lines.addAll(named(say("table.the-player"), player(result.player())));
      lines.addAll(
          named(
              say("table.units"),
              result.units().stream().map(TableReport::unit).collect(Collectors.joining("; "))));
    }
    lines.addAll(named(say("table.target-line"), aim(result.aim())));
    lines.addAll(named(say("table.swings"), count(result.swings())));
    return lines;
  }

  private static List<String> body(LessonResult result, boolean everySwing) {
    LessonTable table = new LessonTable(result.swings());
    List<String> lines = new ArrayList<>(table.lines());
    List<String> notes = new ArrayList<>();
    flags(result.swings()).forEach(flag -> notes.addAll(Layout.beside("!", 2, flag)));
    result.swings().stream()
        .filter(swing -> !swing.note().isEmpty())
        .map(swing -> swings(List.of(Integer.toString(swing.number()))) + ": " + swing.note())
        .forEach(note -> notes.addAll(Layout.beside("\"", 2, note)));
    notes.addAll(Reasons.of(result.swings(), TableReport::isInTheTable, 0));
    Set<String> notices = Words.inUse().told(result.notices()).keySet();
    notices.forEach(notice -> notes.addAll(Layout.beside("*", 2, notice)));
    if (!notes.isEmpty()) {
      lines.add("");
      lines.addAll(notes);
    }
    if (!result.swings().isEmpty()) {
      lines.add("");
      lines.addAll(Cautions.howToRead(table));
    }
    if (everySwing) {
      for (SwingResult swing : result.swings()) {
        lines.add("");
        lines.addAll(new SwingBlock(swing).lines());
      }
      lines.add("");
      lines.addAll(Reasons.of(result.swings(), value -> !isInTheTable(value), 0));
      lines.addAll(Wrapping.wrapped(say("table.each.more"), Layout.WIDTH));
    }
    return lines;
  }

  /** Each flag in words, with the swings it holds for. */
  private static List<String> flags(List<SwingResult> swings) {
    Map<String, List<String>> numbers = new LinkedHashMap<>();
    for (SwingResult swing : swings) {
      for (String flag : LessonTable.flagsToTell(swing)) {
        numbers.computeIfAbsent(flag, f -> new ArrayList<>()).add(Integer.toString(swing.number()));
      }
    }
    List<String> words = new ArrayList<>();
    numbers.forEach((flag, list) -> words.add(swings(list) + ": " + PlainWords.flag(flag)));
    return words;
  }

  /** {@code swing 3} or {@code swings 3, 7}. */
  static String swings(Collection<String> numbers) {
    String key = numbers.size() == 1 ? "table.swing" : "table.swings-list";
    return say(key, String.join(", ", numbers));
  }

  private static boolean isInTheTable(MeasureValue value) {
    return Column.OF_A_LESSON.stream()
        .anyMatch(c -> c.measure() == value.measure() && c.at().equals(value.at()));
  }

  private static List<String> named(String name, String sentence) {
    return Layout.beside(name, NAME_WIDTH, sentence);
  }

  private static String player(Player player) {
    return (player.id() + ", " + say("page.handed." + player.handed().word()))
        + size("table.wide", player.pelvisWidthMm())
        + size("table.deep", player.pelvisDepthMm())
        + size("table.tall", player.statureMm());
  }

  private static String size(String key, OptionalDouble mm) {
    return mm.isPresent() ? ", " + say(key, mm.getAsDouble()) : "";
  }

  private static String unit(UnitResult unit) {
    StringBuilder words = new StringBuilder(PlainWords.bodyPoint(unit.point()));
    words.append(" ").append(Words.inUse().decimal(unit.rateHz(), 0)).append(" Hz");
    if (unit.lostPct() >= 0.05) {
      words.append(", ").append(say("table.lost", unit.lostPct()));
    }
    if (unit.saturatedSamples() > 0) {
      words
          .append(", ")
          .append(Words.inUse().counted("table.beyond-range", unit.saturatedSamples()));
    }
    return words.toString();
  }

  private static String aim(String aim) {
    String from = say(aim.equals("aim-step") ? "table.aim.step" : "table.aim.square");
    return from + "; " + say("table.aim.error");
  }

  private static String count(List<SwingResult> swings) {
    if (swings.isEmpty()) {
      return say("table.none-found");
    }
    Map<String, Long> groups =
        swings.stream()
            .collect(
                Collectors.groupingBy(
                    LessonTable::title, LinkedHashMap::new, Collectors.counting()));
    List<String> words = new ArrayList<>();
    groups.forEach((title, number) -> words.add(number + " x " + title));
    return say("table.found", swings.size(), String.join(", ", words));
  }
}
