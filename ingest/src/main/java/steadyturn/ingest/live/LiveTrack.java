package steadyturn.ingest.live;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.StartTimes;
import steadyturn.ingest.recording.table.WholeFile;
import steadyturn.ingest.recording.write.SampleLines;
import steadyturn.ingest.recording.write.UnitSidecars;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/**
 * One unit's growing motion table. Samples gather in memory, in whole lines, until the recorder's
 * thread puts them on the disk. The sidecars stand before the table's first line, the start time
 * follows it.
 */
public final class LiveTrack {

  private static final int USUAL_BLOCK_BYTES = 1 << 16;

  private final Path root;
  private final RunLabel label;
  private final Path folder;
  private final Path table;
  private final Object gate = new Object();
  private UnitFacts facts;
  private boolean hasNewFacts = true;
  private LocalDateTime startedAt;
  private boolean hasNewStart = true;
  private ByteArrayOutputStream gathering = new ByteArrayOutputStream(USUAL_BLOCK_BYTES);
  private ByteArrayOutputStream writing = new ByteArrayOutputStream(USUAL_BLOCK_BYTES);
  private SampleLines lines = new SampleLines(gathering);
  private long samples;
  private double lastLatencyS;
  private long goodBytes;
  private boolean exists;

  LiveTrack(Path root, RunLabel label, UnitFacts facts, LocalDateTime startedAt) {
    this.root = root;
    this.label = label;
    this.facts = facts;
    this.startedAt = startedAt;
    folder = root.resolve(label.folder()).resolve("motion");
    table = folder.resolve(label.fileName(facts.point().tracksysLabel(), "motion.tsv"));
  }

  public BodyPoint point() {
    synchronized (gate) {
      return facts.point();
    }
  }

  /** Samples taken so far. */
  public long samples() {
    synchronized (gate) {
      return samples;
    }
  }

  /**
   * Takes one sample; it is on the disk within half a second.
   *
   * @param latencyS s since the unit's first sample
   */
  public void sample(double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    synchronized (gate) {
      try {
        lines.write(latencyS, accelMps2, gyroRadPerS);
      } catch (IOException e) {
        throw new IllegalStateException("memory cannot fail to be written", e);
      }
      samples++;
      lastLatencyS = latencyS;
    }
  }

  /** Better knowledge of the unit, as from its hello. */
  public void setFacts(UnitFacts known) {
    synchronized (gate) {
      hasNewFacts |= !known.equals(facts);
      facts = known;
    }
  }

  /** Better knowledge of when its first sample was taken. */
  public void setStartedAt(LocalDateTime better) {
    synchronized (gate) {
      hasNewStart |= !better.equals(startedAt);
      startedAt = better;
    }
  }

  LocalDateTime startedAt() {
    synchronized (gate) {
      return startedAt;
    }
  }

  boolean hasBegun() {
    return exists;
  }

  /** Puts everything gathered on the disk; called by the recorder's thread only. */
  void flush(boolean force) throws IOException {
    boolean newFacts;
    UnitFacts known;
    synchronized (gate) {
      ByteArrayOutputStream full = gathering;
      gathering = writing;
      writing = full;
      lines = new SampleLines(gathering);
      newFacts = hasNewFacts;
      known = facts;
      hasNewFacts &= !exists && full.size() == 0;
    }
    boolean isFirst = !exists && writing.size() > 0;
    if (isFirst || (exists && newFacts)) {
      UnitSidecars.write(folder, label, known, OptionalDouble.empty());
    }
    if (isFirst) {
      WholeFile.write(table, writing::writeTo);
      goodBytes = writing.size();
      exists = true;
    } else if (writing.size() > 0) {
      append(force);
    }
    writing.reset();
    writeStart();
  }

  private void append(boolean force) throws IOException {
    try (FileChannel out = FileChannel.open(table, StandardOpenOption.WRITE)) {
      out.position(goodBytes);
      ByteBuffer block = ByteBuffer.wrap(writing.toByteArray());
      try {
        while (block.hasRemaining()) {
          out.write(block);
        }
        if (force) {
          out.force(false);
        }
      } catch (IOException e) {
        out.truncate(goodBytes);
        throw e;
      }
      goodBytes += writing.size();
    }
  }

  private void writeStart() {
    LocalDateTime toWrite;
    synchronized (gate) {
      if (!exists || !hasNewStart) {
        return;
      }
      hasNewStart = false;
      toWrite = startedAt;
    }
    StartTimes.add(root, label, table, toWrite);
  }

  /** Writes the sidecars once more with the rate that was reached. */
  void finish() {
    synchronized (gate) {
      if (exists && samples > 1) {
        double rateHz = (samples - 1) / lastLatencyS;
        UnitSidecars.write(folder, label, facts, OptionalDouble.of(rateHz));
      }
    }
  }

  Path folder() {
    return folder;
  }
}
