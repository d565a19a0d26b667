package steadyturn.analysis.lesson;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.UnitCount;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** What is said of the units of one recording that comes in overlapping pieces. */
final class UnitTally {

  private final Map<BodyPoint, UnitCount> counts = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, String> serialNumbers = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, Double> countedToS = new EnumMap<>(BodyPoint.class);

  /** Counts what lies behind the pieces before. */
  void add(Recording piece, RecordingReport judged) {
    for (int i = 0; i < piece.units().size(); i++) {
      UnitStream unit = piece.units().get(i);
      BodyPoint point = unit.point();
      double countedS = countedToS.getOrDefault(point, Double.NEGATIVE_INFINITY);
      UnitStream known = unit.between(Double.NEGATIVE_INFINITY, Math.nextUp(countedS));
      UnitCount all = UnitCount.of(unit, judged.units().get(i));
      serialNumbers.putIfAbsent(point, unit.facts().serialNumber());
      if (unit.size() > known.size() || !counts.containsKey(point)) {
        UnitCount fresh = known.size() == 0 ? all : all.without(UnitCount.of(known));
        counts.merge(point, fresh, UnitCount::and);
      }
      if (unit.size() > 0) {
        countedToS.merge(point, unit.timeS(unit.size() - 1), Math::max);
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
