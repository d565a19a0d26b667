package steadyturn.analysis.live;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The latest samples of all units on one axis, filled by the threads of the ports. While no step is
 * under way the last seconds are enough.
 */
public final class StepSamples {

  /** Of this much a step may make use that was just begun, s. */
  private static final double KEPT_S = 3;

  /** A unit that was not heard for so long is not waited for, s. */
  private static final double SILENT_S = 1;

  private static final int FIRST_CAPACITY = 1 << 12;
  private static final int SLOTS = 1 + MotionLayout.SLOTS_PER_POINT;

  private final Player player;
  private final Map<BodyPoint, SampleColumns> columns = new EnumMap<>(BodyPoint.class);
  private final double[] row = new double[SLOTS];
  private double neededFromS = Double.POSITIVE_INFINITY;

  public StepSamples(Player player) {
    this.player = player;
  }

  /** One sample; times of different units are comparable to some milliseconds. */
  public synchronized void add(
      BodyPoint point, double timeS, double[] accelMps2, double[] gyroRadPerS) {
    SampleColumns kept =
        columns.computeIfAbsent(point, p -> new SampleColumns(SLOTS, FIRST_CAPACITY));
    if (kept.size() > 0 && timeS <= kept.lastTimeS()) {
      return; // its clock was just better understood
    }
    row[0] = timeS;
    System.arraycopy(accelMps2, 0, row, 1, 3);
    System.arraycopy(gyroRadPerS, 0, row, 4, 3);
    kept.append(row);
    if (kept.size() % FIRST_CAPACITY == 0) {
      kept.dropBefore(Math.min(neededFromS, timeS - KEPT_S));
    }
  }

  /** Keeps all from an instant on; infinity to keep the last seconds only. */
  synchronized void keepFrom(double fromS) {
    neededFromS = fromS;
  }

  /**
   * Up to when all units that still send were heard; samples come a little after they are taken.
   */
  synchronized double heardToS(double nowS) {
    return columns.values().stream()
        .mapToDouble(SampleColumns::lastTimeS)
        .filter(lastS -> lastS > nowS - SILENT_S)
        .min()
        .orElse(nowS);
  }

  /** The units that sent something. */
  public synchronized List<BodyPoint> points() {
    return List.copyOf(columns.keySet());
  }

  /** What is kept of all units from an instant on. */
  synchronized Recording since(double fromS) {
    return new Recording(
        "live",
        player,
        columns.entrySet().stream().flatMap(e -> since(fromS, e.getKey(), e.getValue())).toList(),
        List.of());
  }

  private static Stream<UnitStream> since(double fromS, BodyPoint point, SampleColumns kept) {
    int from = kept.indexAt(fromS);
    int size = kept.size() - from;
    if (size < 2) {
      return Stream.empty();
    }
    double rateHz = (size - 1) / (kept.lastTimeS() - kept.timeS(from));
    UnitFacts facts = UnitFacts.plain(point, Math.max(1, rateHz));
    return Stream.of(kept.copy(facts, MotionLayout.firstSlot(0), from, kept.size(), 0));
  }
}
