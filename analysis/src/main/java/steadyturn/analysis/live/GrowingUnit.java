package steadyturn.analysis.live;

import java.util.Optional;
import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The latest samples of one unit, on the unit's own time until they are asked for. */
final class GrowingUnit {

  private static final int FIRST_CAPACITY = 1 << 14;

  private final SampleColumns columns =
      new SampleColumns(1 + MotionLayout.SLOTS_PER_POINT, FIRST_CAPACITY);
  private final double[] row = new double[1 + MotionLayout.SLOTS_PER_POINT];
  private UnitFacts facts;
  private double startS;

  GrowingUnit(UnitFacts facts, double startS) {
    this.facts = facts;
    this.startS = startS;
  }

  /** Takes better knowledge of the unit and of when it began, s on the lesson's axis. */
  void isKnown(UnitFacts better, double betterStartS) {
    facts = better;
    startS = betterStartS;
  }

  /** Answers the sample's time on the lesson's axis, s. */
  double add(double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    row[0] = latencyS;
    System.arraycopy(accelMps2, 0, row, 1, 3);
    System.arraycopy(gyroRadPerS, 0, row, 4, 3);
    columns.append(row);
    return latencyS + startS;
  }

  void dropBefore(double timeS) {
    columns.dropBefore(timeS - startS);
  }

  /** A copy of the samples of a stretch; none where there are too few to be a stream. */
  Optional<UnitStream> between(double fromS, double toS) {
    int from = columns.indexAt(fromS - startS);
    int to = columns.indexAt(toS - startS);
    return to - from < 2
        ? Optional.empty()
        : Optional.of(columns.copy(facts, MotionLayout.firstSlot(0), from, to, startS));
  }
}
