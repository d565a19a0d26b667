package steadyturn.ingest.columnmap;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.ingest.columnmap.check.MapCheck;
import steadyturn.ingest.columnmap.check.MapVerdict;
import steadyturn.ingest.columnmap.layout.MapPart;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.RowChoice;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Reads tables of other programs through a column map. */
public final class ColumnMapImporter {

  private ColumnMapImporter() {}

  /**
   * Reads a table, or a folder of tables, and asks gravity and motion whether the map is right.
   *
   * @param mayBeUnasked whether a map is taken at its word where they cannot tell
   * @throws RecordingException when it cannot be read, or when the map is likely wrong
   */
  public static Imported read(Path file, ColumnMap map, boolean mayBeUnasked) {
    Imported imported = readUnchecked(file, map);
    List<String> notices = new ArrayList<>(imported.notices());
    List<String> faults = new ArrayList<>();
    List<String> unasked = new ArrayList<>();
    severalUnits(file, map).ifPresent(faults::add);
    for (int i = 0; i < imported.units().size(); i++) {
      UnitStream unit = imported.units().get(i);
      MapVerdict verdict = MapCheck.of(unit, map.units().get(i));
      String who = unit.point().trackedPoint() + ": ";
      verdict.faults().forEach(fault -> faults.add(who + fault));
      verdict.unasked().forEach(n -> unasked.add(who + n));
    }
    if (!faults.isEmpty()) {
      throw RecordingException.of(
          file, "the column map " + map.name() + " is likely wrong: " + String.join(" ", faults));
    }
    if (!unasked.isEmpty() && !mayBeUnasked) {
      throw RecordingException.of(
          file,
          "the column map "
              + map.name()
              + " could not be checked: "
              + String.join(" ", unasked)
              + " Or take it at its word: --unchecked.");
    }
    unasked.forEach(n -> notices.add(file.getFileName() + ": " + n));
    return new Imported(imported.units(), notices);
  }

  private static Optional<String> severalUnits(Path file, ColumnMap map) {
    return map.parts().stream()
        .filter(part -> part.units().stream().allMatch(unit -> unit.where().isEmpty()))
        .flatMap(part -> TellingColumn.in(tableOf(file, part), part).stream())
        .filter(TellingColumn::isOfWords)
        .map(TellingColumn::told)
        .findFirst();
  }

  /** Reads it and takes the map's word for it. */
  public static Imported readUnchecked(Path file, ColumnMap map) {
    Map<BodyPoint, JoinedUnit> joined = new EnumMap<>(BodyPoint.class);
    List<String> notices = new ArrayList<>();
    for (MapPart part : map.parts()) {
      Map<Optional<RowChoice>, List<UnitColumns>> byRows =
          part.units().stream()
              .collect(
                  Collectors.groupingBy(
                      UnitColumns::where, LinkedHashMap::new, Collectors.toList()));
      byRows.forEach(
          (where, units) -> notices.addAll(read(tableOf(file, part), part, where, units, joined)));
    }
    List<UnitStream> units =
        map.units().stream()
            .map(
                u ->
                    Objects.requireNonNull(joined.get(u.point())).stream(
                        u, timeS -> facts(u, timeS)))
            .toList();
    return new Imported(units, notices);
  }

  private static Path tableOf(Path file, MapPart part) {
    if (part.file().isEmpty()) {
      return file;
    }
    if (!Files.isDirectory(file)) {
      throw RecordingException.of(
          file, "the map reads several files; name the folder that holds " + part.file() + ".");
    }
    return file.resolve(part.file());
  }

  private static List<String> read(
      Path table,
      MapPart part,
      Optional<RowChoice> where,
      List<UnitColumns> units,
      Map<BodyPoint, JoinedUnit> joined) {
    MappedReading reading =
        new MappedReading(
            table, part, where, units.stream().flatMap(u -> u.vectors().stream()).toList());
    double[][] columns = reading.read();
    double[] timeS = part.time().isOfBatches() ? BatchTimes.spread(columns[0]) : columns[0];
    int next = 1;
    for (UnitColumns unit : units) {
      for (MappedVector vector : unit.vectors()) {
        double[][] its = Arrays.copyOfRange(columns, next, next + vector.columns().size());
        joined.computeIfAbsent(unit.point(), p -> new JoinedUnit()).add(vector, timeS, its);
        next += its.length;
      }
    }
    return reading.notices();
  }

  private static UnitFacts facts(UnitColumns unit, double[] timeS) {
    return new UnitFacts(
        unit.point(),
        unit.serialNumber(),
        unit.rateHz().orElseGet(() -> rateHz(timeS)),
        unit.accel().orElseThrow().fullScaleSi(),
        unit.gyro().orElseThrow().fullScaleSi(),
        false);
  }

  /** One over the median step of time, to 0.01 Hz. */
  private static double rateHz(double[] timeS) {
    return timeS.length < 2 ? 1 : Math.max(0.01, Math.round(100 / Increments.stepS(timeS)) / 100.0);
  }

  /**
   * Puts units from one or more tables, all on one clock, into a recording: its zero is the first
   * sample of the pelvis unit, or of the first unit where there is no pelvis.
   *
   * @param marks on the tables' own time axis
   */
  public static Recording recording(
      String id, Player player, List<UnitStream> units, List<Mark> marks) {
    List<UnitStream> sorted =
        units.stream().sorted(Comparator.comparing(UnitStream::point)).toList();
    requireDistinct(id, sorted);
    UnitStream zero =
        sorted.stream()
            .filter(u -> u.size() > 0)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException(id + " has no samples"));
    double zeroS = zero.timeS(0);
    return new Recording(
        id,
        player,
        sorted.stream().map(u -> u.shifted(-zeroS)).toList(),
        marks.stream().map(mark -> mark.shifted(-zeroS)).toList());
  }

  private static void requireDistinct(String id, List<UnitStream> units) {
    var byPoint = units.stream().collect(Collectors.groupingBy(UnitStream::point));
    byPoint.forEach(
        (BodyPoint point, List<UnitStream> claims) -> {
          if (claims.size() > 1) {
            throw RecordingException.of(
                Path.of(id),
                claims.size()
                    + " tables claim the body point "
                    + point.trackedPoint()
                    + ". Name the right point for each.");
          }
        });
  }
}
