package steadyturn.ingest.recording.table;

import java.nio.file.Path;

/** Puts each sample on the time axis of its table, which begins at the first sample and grows. */
final class SampleTime {

  private final Path file;
  private final boolean hasColumn;
  private final double rateHz;
  private final MotionTally tally;
  private long placed;
  private double zeroS = Double.NaN;
  private double lastS = Double.NEGATIVE_INFINITY;

  /**
   * @param hasColumn whether slot 0 of a row holds a time; else samples are counted
   * @param rateHz the rate at which they are counted
   */
  SampleTime(Path file, boolean hasColumn, double rateHz, MotionTally tally) {
    this.file = file;
    this.hasColumn = hasColumn;
    this.rateHz = rateHz;
    this.tally = tally;
  }

  /** Sets slot 0 of the row; false when the sample is to be left out. */
  boolean places(double[] row, long line) {
    if (!hasColumn) {
      row[0] = placed / rateHz;
    } else if (Double.isNaN(row[0])) {
      tally.withoutTime();
      return false;
    } else {
      zeroS = Double.isNaN(zeroS) ? row[0] : zeroS;
      row[0] -= zeroS;
    }
    if (row[0] < lastS) {
      throw backwards(row[0], line);
    }
    if (row[0] == lastS) {
      tally.repeated(line);
      return false;
    }
    lastS = row[0];
    placed++;
    return true;
  }

  private RecordingException backwards(double timeS, long line) {
    return RecordingException.at(
        file,
        line,
        "time runs backwards, from "
            + (float) lastS
            + " s to "
            + (float) timeS
            + " s after the start. Split the recording where its clock was set back.");
  }
}
