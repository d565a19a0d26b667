package steadyturn.ingest.columnmap;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.TableShape;
import steadyturn.ingest.columnmap.layout.TimeColumn;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.UnitWords;

/**
 * How a table of a phone's logger is laid out, by its header and first line.
 *
 * @param axes x, y, z by number
 * @param accelToSi 1 where no unit is named
 */
record PhoneTable(
    TableShape shape, TimeColumn time, List<ColumnRef> axes, double accelToSi, double rateToSi) {

  static PhoneTable of(Path table) {
    List<String> lines = head(table);
    String header = lines.get(0);
    char delimiter =
        Stream.of(';', '\t', ',').filter(c -> header.indexOf(c) >= 0).findFirst().orElse(',');
    char decimal = delimiter != ',' && lines.get(1).indexOf(',') >= 0 ? ',' : '.';
    TableShape shape =
        new TableShape(delimiter, "", 0, 1, decimal, List.of("n/a", "NaN", "nan", "null"));
    List<String> names = new ArrayList<>();
    for (String name : header.split(String.valueOf(delimiter), -1)) {
      names.add(name.replace("\"", "").replace("\ufeff", "").strip());
    }
    String[] first = lines.get(1).split(String.valueOf(delimiter), -1);
    List<ColumnRef> axes = new ArrayList<>();
    for (String axis : List.of("x", "y", "z")) {
      axes.add(ColumnRef.numbered(1 + only(table, names, axis)));
    }
    String axis = names.get(axes.get(0).number() - 1);
    return new PhoneTable(
        shape,
        time(table, names, first, decimal),
        axes,
        UnitWords.accelToMps2(unit(axis)).orElse(1),
        UnitWords.rateToRadPerS(unit(axis)).orElse(1));
  }

  /** What the header names before its first axis; empty where it names axes alone. */
  static String quantity(Path table) {
    return Stream.of(head(table).get(0).split("[;\t,]", -1))
        .map(name -> word(name.replace("\"", "")))
        .filter(word -> word.endsWith(" x"))
        .map(word -> word.substring(0, word.length() - 2))
        .findFirst()
        .orElse("");
  }

  private static List<String> head(Path table) {
    try (Stream<String> lines = Files.lines(table, StandardCharsets.UTF_8)) {
      List<String> two = lines.limit(2).toList();
      if (two.size() == 2) {
        return two;
      }
    } catch (IOException e) {
      throw RecordingException.io(table, e);
    }
    throw RecordingException.of(table, "holds no sample. Export it again.");
  }

  /** What stands in brackets. */
  private static String unit(String name) {
    return name.contains("(") ? name.replaceFirst(".*\\(", "").replaceFirst("\\).*", "") : "";
  }

  private static String word(String name) {
    return name.replaceFirst("\\(.*", "").toLowerCase(ROOT).replace('_', ' ').strip();
  }

  /** The column whose name is the axis, or ends or begins with it as a word. */
  private static int only(Path table, List<String> names, String axis) {
    for (int i = 0; i < names.size(); i++) {
      String word = word(names.get(i));
      if (word.equals(axis)
          || word.endsWith(" " + axis)
          || word.startsWith(axis + " ")
          || word.equals("a" + axis)
          || word.equals("g" + axis)
          || word.equals("w" + axis)) {
        return i;
      }
    }
    throw RecordingException.of(
        table,
        "has no column for "
            + axis
            + " (its header: "
            + String.join(", ", names)
            + "). Write a column map for it.");
  }

  private static TimeColumn time(Path table, List<String> names, String[] first, char decimal) {
    int at = -1;
    for (String wanted : List.of("seconds elapsed", "time", "timestamp", "elapsed", "t")) {
      for (int i = 0; i < names.size() && at < 0; i++) {
        at = word(names.get(i)).equals(wanted) ? i : at;
      }
    }
    if (at < 0) {
      throw RecordingException.of(
          table, "has no column of time (its header: " + String.join(", ", names) + ").");
    }
    String unit = word(names.get(at)).startsWith("seconds") ? "s" : unit(names.get(at));
    double toS = UnitWords.timeToS(unit).orElse(bySize(first[at].replace("\"", ""), decimal));
    return new TimeColumn(
        List.of(ColumnRef.numbered(1 + at)), toS, OptionalDouble.empty(), Optional.empty(), false);
  }

  /** Counts since 1970 tell their unit by their size: seconds, ms, us or ns. */
  private static double bySize(String cell, char decimal) {
    double value = Double.parseDouble(cell.replace(decimal, '.'));
    return value > 1e17 ? 1e-9 : value > 1e14 ? 1e-6 : value > 1e11 ? 1e-3 : 1;
  }
}
