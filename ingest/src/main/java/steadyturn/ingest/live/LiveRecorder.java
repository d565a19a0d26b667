package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.serial.HostTime;

/**
 * Streams a lesson into a dataset while it is recorded. Four times a second everything gathered
 * goes to the disk; every half second the disk is told to keep it. After a crash at any moment the
 * dataset opens and lacks at most the last second. A disk that runs full ends the recording before
 * anything is damaged: {@link #stopped} then says so.
 */
public final class LiveRecorder implements AutoCloseable {

  private static final int FLUSH_MS = 200;
  private static final int FLUSHES_A_FORCE = 2;

  /**
   * Room that must be left: several minutes of five units at 1 kHz, and the sidecars' rewriting.
   */
  private static final long LEAST_FREE_BYTES = 16L << 20;

  /** How much room the disk has left. */
  @FunctionalInterface
  interface FreeRoom {
    long bytes() throws IOException;
  }

  private final Path root;
  private final RunLabel label;
  private final FreeRoom freeRoom;
  private final RecordingLock lock;
  private final MarkBox box;
  private final List<LiveTrack> tracks = new CopyOnWriteArrayList<>();
  private final List<LiveMark> marks = new CopyOnWriteArrayList<>();
  private final Thread thread;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Instant zeroAt = Instant.now();
  private final double zeroSteadyS = HostTime.steadyS();
  private volatile String stopReason = "";
  private final MarkPage page;

  private LiveRecorder(Path root, RunLabel label, FreeRoom freeRoom, RecordingLock lock)
      throws IOException {
    this.root = root;
    this.label = label;
    this.freeRoom = freeRoom;
    this.lock = lock;
    box = MarkBox.emptied(root);
    page = new MarkPage(label);
    thread = new Thread(this::run, "recorder");
  }

  /** Begins the next run of a player's lesson in a dataset, which is made where it is not there. */
  public static LiveRecorder start(Path root, Player player, String lesson) throws IOException {
    Files.createDirectories(root);
    return start(root, player, lesson, () -> Files.getFileStore(root).getUsableSpace());
  }

  static LiveRecorder start(Path root, Player player, String lesson, FreeRoom freeRoom)
      throws IOException {
    if (freeRoom.bytes() < 2 * LEAST_FREE_BYTES) {
      throw RecordingException.of(
          root, "lies on a disk that is nearly full. Make room, or record to another disk.");
    }
    Files.createDirectories(root);
    RecordingLock lock = RecordingLock.of(root);
    RunLabel label = RecordingWriter.into(root, "Golf lessons").nextRun(player.id(), lesson);
    Participants.add(root, player);
    LiveRecorder recorder = new LiveRecorder(root, label, freeRoom, lock);
    recorder.thread.start();
    return recorder;
  }

  /** The run that is being written. */
  public RunLabel label() {
    return label;
  }

  /** The time of day at a time of the host's steady clock, the same for all units. */
  public LocalDateTime timeOfDay(double steadyS) {
    long micros = Math.round((steadyS - zeroSteadyS) * 1e6);
    return LocalDateTime.ofInstant(zeroAt.plusNanos(1000 * micros), ZoneId.systemDefault());
  }

  /** Whether no unit is worn there yet. */
  public boolean isFree(BodyPoint point) {
    return tracks.stream().noneMatch(t -> t.point() == point);
  }

  /** Adds a unit; nothing is written for it before its first sample. */
  public LiveTrack unit(UnitFacts facts, LocalDateTime startedAt) {
    if (!isFree(facts.point())) {
      throw new IllegalArgumentException("two units claim to be worn at " + facts.point());
    }
    LiveTrack track = new LiveTrack(root, label, facts, startedAt);
    tracks.add(track);
    return track;
  }

  /** Adds a mark; marks also come from other processes by {@link MarkBox}. */
  public void mark(LiveMark mark) {
    marks.add(mark);
  }

  /** Marks taken so far. */
  public int marks() {
    return marks.size();
  }

  /** Why the recording ended by itself; empty while it runs. */
  public Optional<String> stopped() {
    return stopReason.isEmpty() ? Optional.empty() : Optional.of(stopReason);
  }

  /** Puts the rest on the disk and ends. */
  @Override
  public void close() {
    closing.countDown();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    lock.release();
  }

  private void run() {
    int flushes = 0;
    while (stopReason.isEmpty() && !isClosing()) {
      flush(++flushes % FLUSHES_A_FORCE == 0);
    }
    if (stopReason.isEmpty()) {
      flush(true);
      tracks.forEach(LiveTrack::finish);
    }
  }

  private boolean isClosing() {
    try {
      return closing.await(FLUSH_MS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      return true;
    }
  }

  private void flush(boolean force) {
    try {
      if (freeRoom.bytes() < LEAST_FREE_BYTES) {
        stopReason = "the disk is full; the recording was ended, what was recorded is safe";
        return;
      }
      for (LiveTrack track : tracks) {
        track.flush(force);
      }
      marks.addAll(box.take());
      page.write(tracks, List.copyOf(marks));
    } catch (IOException | RecordingException e) {
      stopReason =
          "could not write (" + e.getMessage() + "); the recording was ended, the rest is safe";
    }
  }
}
