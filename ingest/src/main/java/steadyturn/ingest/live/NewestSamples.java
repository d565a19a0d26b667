package steadyturn.ingest.live;

import steadyturn.ingest.recording.table.MotionLayout;
import steadyturn.ingest.recording.table.SampleColumns;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The newest samples of one live unit, filled by the thread of its port and read by others. They
 * keep the unit's own time; where that lies on a common axis may become better known.
 */
public final class NewestSamples {

  private static final int SLOTS = 1 + MotionLayout.SLOTS_PER_POINT;
  private static final int FIRST_CAPACITY = 1 << 12;

  private final SampleColumns columns = new SampleColumns(SLOTS, FIRST_CAPACITY);
  private final double[] row = new double[SLOTS];
  private double startS;

  /** Lays the unit's first sample on the axis, s; 0 until then. */
  public synchronized void startsAt(double betterStartS) {
    startS = betterStartS;
  }

  /**
   * Takes one sample.
   *
   * @param latencyS s since the unit's first
   * @return its time on the axis, s
   */
  public synchronized double add(double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    row[0] = latencyS;
    System.arraycopy(accelMps2, 0, row, 1, 3);
    System.arraycopy(gyroRadPerS, 0, row, 4, 3);
    columns.append(row);
    return latencyS + startS;
  }

  /** Lets the samples before an instant go. */
  public synchronized void dropBefore(double timeS) {
    columns.dropBefore(timeS - startS);
  }

  /** Time of the newest, s; before all times where there is none. */
  public synchronized double lastS() {
    return columns.size() == 0 ? Double.NEGATIVE_INFINITY : columns.lastTimeS() + startS;
  }

  /** A copy of the samples of a stretch. */
  public synchronized UnitStream between(UnitFacts facts, double fromS, double toS) {
    int from = columns.indexAt(fromS - startS);
    int to = Math.max(from, columns.indexAt(toS - startS));
    return columns.copy(facts, MotionLayout.firstSlot(0), from, to, startS);
  }
}
