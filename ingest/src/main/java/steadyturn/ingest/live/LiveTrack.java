package steadyturn.ingest.live;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.StartTimes;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
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
  private final Disk disk;
  private final BodyPoint point;
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
  private boolean isEnded;
  private double lastLatencyS;
  private long goodBytes;
  private boolean isUnsettled;
  private volatile boolean exists;
  private volatile long kept;

  LiveTrack(Path root, RunLabel label, Disk disk, UnitFacts facts, LocalDateTime startedAt) {
    this.root = root;
    this.label = label;
    this.disk = disk;
    this.facts = facts;
    this.startedAt = startedAt;
    point = facts.point();
    folder = root.resolve(label.folder()).resolve("motion");
    table = folder.resolve(label.fileName(point.tracksysLabel(), "motion.tsv"));
  }

  public BodyPoint point() {
    return point;
  }

  /** Samples taken so far, written or not. */
  public long samples() {
    synchronized (gate) {
      return samples;
    }
  }

  /** Samples that are in the file. */
  public long kept() {
    return kept;
  }

  /**
   * Takes one sample; it is on the disk within half a second. After the recording has ended it is
   * only counted.
   *
   * @param latencyS s since the unit's first sample
   */
  public void sample(double latencyS, double[] accelMps2, double[] gyroRadPerS) {
    synchronized (gate) {
      samples++;
      if (isEnded) {
        return;
      }
      try {
        lines.write(latencyS, accelMps2, gyroRadPerS);
      } catch (IOException e) {
        throw new IllegalStateException("memory cannot fail to be written", e);
      }
      lastLatencyS = latencyS;
    }
  }

  /** Better knowledge of the unit, as from its hello. */
  public void setFacts(UnitFacts known) {
    if (known.point() != point) {
      throw new IllegalArgumentException("the table of " + point + " is none of " + known.point());
    }
    synchronized (gate) {
      hasNewFacts |= !known.equals(facts);
      facts = known;
    }
  }

  UnitFacts facts() {
    synchronized (gate) {
      return facts;
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
    long withThese;
    synchronized (gate) {
      ByteArrayOutputStream full = gathering;
      gathering = writing;
      writing = full;
      lines = new SampleLines(gathering);
      newFacts = hasNewFacts;
      known = facts;
      withThese = samples;
      hasNewFacts &= !exists && full.size() == 0;
    }
    boolean isFirst = !exists && writing.size() > 0;
    if (isFirst) {
      UnitSidecars.write(folder, label, known, OptionalDouble.empty());
      WholeFile.write(table, writing::writeTo);
      exists = true;
    } else if (writing.size() > 0 || (force && isUnsettled)) {
      append(force);
      isUnsettled = !force;
    }
    goodBytes += writing.size();
    kept = withThese;
    writing.reset();
    if (exists && newFacts && !isFirst) {
      UnitSidecars.write(folder, label, known, OptionalDouble.empty());
    }
    writeStart();
  }

  private void append(boolean force) throws IOException {
    try {
      disk.append(table, goodBytes, ByteBuffer.wrap(writing.toByteArray()), force);
    } catch (IOException | RuntimeException e) {
      try {
        disk.cutBack(table, goodBytes);
      } catch (IOException | RuntimeException worse) {
        e.addSuppressed(worse); // half a line stays at the end; reading leaves it out
      }
      throw e;
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
    boolean isWritten = StartTimes.add(root, label, table, toWrite);
    synchronized (gate) {
      hasNewStart |= !isWritten; // someone else changes the archive: next time
    }
  }

  /** Takes no more samples. */
  void end() {
    synchronized (gate) {
      isEnded = true;
    }
  }

  /** Writes the sidecars once more with the rate that was reached. */
  void finish() {
    synchronized (gate) {
      if (exists && samples > 1 && lastLatencyS > 0) {
        double rateHz = (samples - 1) / lastLatencyS;
        UnitSidecars.write(folder, label, facts, OptionalDouble.of(rateHz));
      }
    }
    ArchiveLock.whileWriting(root, this::writeStart);
  }

  Path folder() {
    return folder;
  }
}
