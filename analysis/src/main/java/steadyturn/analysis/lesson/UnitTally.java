package steadyturn.analysis.lesson;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.quality.UnitCount;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** What is said of the units of one recording that comes in overlapping pieces. */
final class UnitTally {

  private final Map<BodyPoint, UnitCount> counts = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, String> serialNumbers = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, Double> countedToS = new EnumMap<>(BodyPoint.class);

  /** Counts what lies behind the pieces before; the sample that joins them is in both. */
  void add(Recording piece) {
    for (UnitStream unit : piece.units()) {
      BodyPoint point = unit.point();
      UnitStream fresh =
          countedToS.containsKey(point)
              ? unit.between(countedToS.get(point), Double.POSITIVE_INFINITY)
              : unit;
      serialNumbers.putIfAbsent(point, unit.facts().serialNumber());
      if (fresh.size() > 1 || !counts.containsKey(point)) {
        counts.merge(point, UnitCount.of(fresh), UnitCount::and);
      }
      if (fresh.size() > 0) {
        countedToS.put(point, fresh.timeS(fresh.size() - 1));
      }
    }
  }

  List<UnitResult> results() {
    return counts.entrySet().stream()
        .map(
            e ->
                new UnitResult(
                    e.getKey(),
                    serialNumbers.getOrDefault(e.getKey(), ""),
                    e.getValue().rateHz(),
                    e.getValue().lostPct(),
                    e.getValue().saturatedSamples()))
        .toList();
  }
}
