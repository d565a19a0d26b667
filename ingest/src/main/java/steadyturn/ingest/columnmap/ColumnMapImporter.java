package steadyturn.ingest.columnmap;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.sample.Averages;
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
   * Reads a table and asks gravity and motion whether the map is right.
   *
   * @throws RecordingException when the table cannot be read, or when the map is likely wrong
   */
  public static Imported read(Path file, ColumnMap map) {
    Imported imported = readUnchecked(file, map);
    List<String> notices = new ArrayList<>(imported.notices());
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < imported.units().size(); i++) {
      UnitStream unit = imported.units().get(i);
      MapVerdict verdict = MapCheck.of(unit, map.units().get(i));
      String who = unit.point().trackedPoint() + ": ";
      verdict.faults().forEach(fault -> faults.add(who + fault));
      verdict.notices().forEach(n -> notices.add(file.getFileName() + ": " + who + n));
    }
    if (!faults.isEmpty()) {
      throw RecordingException.of(
          file, "the column map " + map.name() + " is likely wrong: " + String.join(" ", faults));
    }
    return new Imported(imported.units(), notices);
  }

  /** Reads a table and takes the map's word for it. */
  public static Imported readUnchecked(Path file, ColumnMap map) {
    MappedReading reading = new MappedReading(file, map);
    SampleColumns columns = reading.read();
    List<UnitStream> units = new ArrayList<>();
    for (int i = 0; i < map.units().size(); i++) {
      UnitFacts facts = facts(map.units().get(i), columns);
      units.add(columns.copy(facts, MotionLayout.firstSlot(i), 0, columns.size(), 0));
    }
    return new Imported(units, reading.notices());
  }

  private static UnitFacts facts(UnitColumns unit, SampleColumns columns) {
    return new UnitFacts(
        unit.point(),
        unit.serialNumber(),
        unit.rateHz().orElseGet(() -> rateHz(columns)),
        unit.accelFullScaleMps2(),
        unit.gyroFullScaleRadPerS(),
        false);
  }

  /** One over the median step of time, to 0.01 Hz. */
  private static double rateHz(SampleColumns columns) {
    double medianS = Averages.medianStep(columns::timeS, columns.size());
    return columns.size() < 2 ? 1 : Math.max(0.01, Math.round(100 / medianS) / 100.0);
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
