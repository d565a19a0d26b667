package steadyturn.cli.command.lesson;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.clock.TableStart;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * Lays imported tables on one clock: as it was told ({@code [POINT=]TIME}), else by what their
 * units felt together, else not at all.
 */
final class ImportStarts {

  /** Where the day of a recording is not told: a date that nobody takes for a real one. */
  static final LocalDateTime UNKNOWN_DAY = LocalDateTime.of(1900, 1, 1, 0, 0);

  private static final double NANOS = 1e9;

  private final Console console;
  private final Map<BodyPoint, LocalDateTime> told = new EnumMap<>(BodyPoint.class);

  /** Those told to a fraction of a second; others are a first guess. */
  private final List<BodyPoint> exact = new ArrayList<>();

  private Optional<LocalDateTime> whole = Optional.empty();

  ImportStarts(List<String> words, Console console) {
    this.console = console;
    for (String word : words) {
      int equals = word.indexOf('=');
      if (equals < 0) {
        whole = Optional.of(time(word));
      } else {
        BodyPoint point =
            BodyPoint.ofTrackedPoint(word.substring(0, equals))
                .orElseThrow(
                    () -> console.wrongUsage("--start %s: say POINT=TIME, or TIME alone", word));
        told.put(point, time(word.substring(equals + 1)));
        if (word.contains(".")) {
          exact.add(point);
        }
      }
    }
  }

  private LocalDateTime time(String word) {
    try {
      return LocalDateTime.parse(word);
    } catch (DateTimeParseException e) {
      throw console.wrongUsage("--start %s: write a time as 2026-05-31T10:00:00.250", word);
    }
  }

  boolean isTold() {
    return whole.isPresent() || !told.isEmpty();
  }

  /** The time of day at the first sample of the recording. */
  LocalDateTime begin() {
    return whole
        .or(() -> told.values().stream().min(Comparator.naturalOrder()))
        .orElse(UNKNOWN_DAY);
  }

  /** All units on the clock of the first table, which holds the pelvis where one does. */
  List<UnitStream> laid(List<List<UnitStream>> tables) {
    List<List<UnitStream>> waiting = new ArrayList<>();
    tables.stream()
        .map(table -> table.stream().filter(u -> u.size() > 0).toList())
        .filter(table -> !table.isEmpty())
        .sorted(
            Comparator.comparing(t -> t.stream().map(UnitStream::point).sorted().toList().get(0)))
        .forEach(waiting::add);
    List<UnitStream> known =
        new ArrayList<>(tables.stream().flatMap(List::stream).filter(u -> u.size() == 0).toList());
    if (waiting.isEmpty()) {
      return known;
    }
    List<UnitStream> first = waiting.remove(0);
    known.addAll(first);
    waiting.replaceAll(table -> guessed(table, first));
    Stream.of(waiting).flatMap(List::stream).filter(this::isExact).toList().forEach(known::addAll);
    waiting.removeIf(this::isExact);
    while (!waiting.isEmpty()) {
      tieSurest(waiting, known);
    }
    return known;
  }

  private boolean isExact(List<UnitStream> table) {
    return table.stream().anyMatch(u -> exact.contains(u.point()));
  }

  /** Where a table was told to begin, else where its own times lay it, else beside the first. */
  private List<UnitStream> guessed(List<UnitStream> table, List<UnitStream> first) {
    Optional<LocalDateTime> own = told(table);
    Optional<LocalDateTime> others = told(first).or(() -> whole);
    double firstS = first.get(0).timeS(0);
    double beginS = table.get(0).timeS(0);
    double endS = beginS + table.get(0).lengthS();
    boolean overlaps = beginS < firstS + first.get(0).lengthS() && endS > firstS;
    double byS = overlaps ? 0 : firstS - beginS;
    if (own.isPresent() && others.isPresent()) {
      byS = firstS + Duration.between(others.get(), own.get()).toNanos() / NANOS - beginS;
    }
    double laidS = byS;
    return table.stream().map(u -> u.shifted(laidS)).toList();
  }

  private Optional<LocalDateTime> told(List<UnitStream> table) {
    return table.stream()
        .flatMap(u -> Optional.ofNullable(told.get(u.point())).stream())
        .findFirst();
  }

  private void tieSurest(List<List<UnitStream>> waiting, List<UnitStream> known) {
    record Found(List<UnitStream> table, TableStart start) {}
    Found best =
        waiting.stream()
            .flatMap(t -> TableStart.of(t, known).map(s -> new Found(t, s)).stream())
            .min(Comparator.comparingDouble(found -> found.start.sdS()))
            .orElseThrow(
                () ->
                    RecordingException.of(
                        Path.of(point(waiting.get(0))),
                        Words.say("import.start.untold", point(known))));
    waiting.remove(best.table);
    best.table.forEach(u -> known.add(u.shifted(best.start.byS())));
    console.warn(
        Words.say(
            best.start.byS() < 0 ? "import.start.tied.earlier" : "import.start.tied.later",
            point(best.table),
            best.start.other().trackedPoint(),
            1000 * Math.abs(best.start.byS()),
            1000 * best.start.sdS()));
  }

  private static String point(List<UnitStream> table) {
    return table.get(0).point().trackedPoint();
  }
}
