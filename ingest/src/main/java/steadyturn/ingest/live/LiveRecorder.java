package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.PrivateFiles;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.serial.HostTime;

/**
 * Streams a lesson into a dataset while it is recorded. Four times a second everything gathered
 * goes to the disk; every half second the disk is told to keep it. After a crash at any moment the
 * dataset opens and lacks at most the last second. When it cannot go on, whatever the cause, the
 * recording ends with what is on the disk and {@link #stopped} says so; what costs less than the
 * recording is told by {@link #news}.
 */
public final class LiveRecorder implements AutoCloseable {

  private static final int FLUSH_MS = 200;
  private static final int FLUSHES_A_FORCE = 2;

  /** Room that must be left: minutes of five units at 1 kHz, and the sidecars' rewriting. */
  private static final long LEAST_FREE_BYTES = 16L << 20;

  private final Path root;
  private final RunLabel label;
  private final Disk disk;
  private final ArchiveLock lock;
  private final RecordingWriter writer;
  private final MarkBox box;
  private final List<LiveTrack> tracks = new CopyOnWriteArrayList<>();
  private final List<LiveMark> marks = new CopyOnWriteArrayList<>();
  private final Queue<String> news = new ConcurrentLinkedQueue<>();
  private final Thread thread;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Clock wall;
  private final Instant zeroAt;
  private final ZoneOffset offset; // the one at the start: a lesson knows no summer time
  private final double zeroSteadyS = HostTime.steadyS();
  private volatile String stopReason = "";
  private volatile Consumer<LiveMark> onMark = mark -> {};
  private volatile Consumer<LiveMark> onUnmark = mark -> {};
  private String markTrouble = "";
  private final MarkPage page;

  private LiveRecorder(
      Path root, Player player, String lesson, Disk disk, ArchiveLock lock, Clock wall)
      throws IOException {
    this.wall = wall;
    zeroAt = wall.instant();
    offset = wall.getZone().getRules().getOffset(zeroAt);
    this.root = root;
    this.disk = disk;
    this.lock = lock;
    box = MarkBox.emptied(root);
    writer = RecordingWriter.into(root, "Golf lessons");
    label = writer.keepNextRun(player, lesson);
    page = new MarkPage(label);
    thread = new Thread(this::run, "recorder");
  }

  /** Begins the next run of a player's lesson in a dataset, which is made where it is not there. */
  public static LiveRecorder start(Path root, Player player, String lesson) throws IOException {
    return start(root, player, lesson, new Disk() {}, Clock.system(ZoneId.systemDefault()));
  }

  static LiveRecorder start(Path root, Player player, String lesson, Disk disk) throws IOException {
    return start(root, player, lesson, disk, Clock.system(ZoneId.systemDefault()));
  }

  static LiveRecorder start(Path root, Player player, String lesson, Disk disk, Clock wall)
      throws IOException {
    PrivateFiles.folders(root);
    if (disk.freeBytes(root) < 2 * LEAST_FREE_BYTES) {
      throw RecordingException.of(
          root, "lies on a disk that is nearly full. Make room, or record to another disk.");
    }
    ArchiveLock lock = ArchiveLock.recording(root);
    try {
      LiveRecorder recorder = new LiveRecorder(root, player, lesson, disk, lock, wall);
      recorder.thread.start();
      return recorder;
    } catch (IOException | RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  /** The run that is being written. */
  public RunLabel label() {
    return label;
  }

  /** The time of day at a time of the host's steady clock, the same for all units. */
  public LocalDateTime timeOfDay(double steadyS) {
    long micros = Math.round((steadyS - zeroSteadyS) * 1e6);
    return LocalDateTime.ofInstant(zeroAt.plusNanos(1000 * micros), offset);
  }

  /**
   * Adds a unit; nothing is written for it before its first sample.
   *
   * @return its table; empty when another unit is worn there already
   */
  public synchronized Optional<LiveTrack> unit(UnitFacts facts, LocalDateTime startedAt) {
    if (tracks.stream().anyMatch(t -> t.point() == facts.point())) {
      return Optional.empty();
    }
    LiveTrack track = new LiveTrack(root, label, disk, facts, startedAt);
    tracks.add(track);
    return Optional.of(track);
  }

  /** Adds a mark of this moment, by the clock of the samples. */
  public LiveMark markNow(String trialType, String club, String note) {
    LiveMark mark = new LiveMark(timeOfDay(HostTime.steadyS()), 0, trialType, club, note);
    mark(mark);
    return mark;
  }

  /** Takes a mark back, also from the file. */
  public void unmark(LiveMark mark) {
    if (marks.remove(mark)) {
      onUnmark.accept(mark);
    }
  }

  /**
   * Brings a mark of another process onto the clock of the samples: the time of day may have been
   * set anew since the recording began.
   */
  private LiveMark onOurClock(LiveMark mark) {
    Duration ahead = Duration.between(LocalDateTime.now(wall), timeOfDay(HostTime.steadyS()));
    return new LiveMark(
        mark.at().plus(ahead), mark.durationS(), mark.trialType(), mark.club(), mark.note());
  }

  /** Adds a mark; marks also come from other processes by {@link MarkBox}. */
  public void mark(LiveMark mark) {
    if (mark.isNear(timeOfDay(zeroSteadyS))) {
      marks.add(mark);
      onMark.accept(mark);
    } else {
      news.add("a mark of " + mark.at() + " was left out: it lies days from this recording");
    }
  }

  /** Tells someone besides of every mark, and of those taken back, by the thread that brings it. */
  public void tellMarks(Consumer<LiveMark> listener, Consumer<LiveMark> takenBack) {
    onMark = listener;
    onUnmark = takenBack;
  }

  /** Marks taken so far. */
  public int marks() {
    return marks.size();
  }

  /** Why the recording ended by itself; empty while it runs. */
  public Optional<String> stopped() {
    return stopReason.isEmpty() ? Optional.empty() : Optional.of(stopReason);
  }

  /** What a person should know, a sentence each, told once. */
  public List<String> news() {
    return Stream.generate(news::poll).takeWhile(Objects::nonNull).toList();
  }

  void tell(String sentence) {
    news.add(sentence);
  }

  /** Samples and marks that were taken but are not on the disk; to be asked after closing. */
  public long missing() {
    return tracks.stream().mapToLong(t -> t.samples() - t.kept()).sum()
        + (kept() > 0 ? marks.size() - page.written() : 0);
  }

  /** Samples on the disk. */
  public long kept() {
    return tracks.stream().mapToLong(LiveTrack::kept).sum();
  }

  /** Puts the rest on the disk and ends; a second time does nothing. */
  @Override
  public void close() {
    closing.countDown();
    boolean isInterrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        isInterrupted = true; // what was taken is written first
      }
    }
    lock.close();
    if (isInterrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** Whatever fails, the recording ends in order and says why. */
  private void run() {
    try {
      int flushes = 0;
      while (stopReason.isEmpty() && !isClosing()) {
        flush(++flushes % FLUSHES_A_FORCE == 0);
      }
      if (stopReason.isEmpty()) {
        flush(true);
      }
    } catch (Throwable e) {
      stop(e);
    }
    tracks.forEach(LiveTrack::end);
    tracks.forEach(track -> tried(track::finish));
    tried(() -> writer.giveBack(label));
  }

  private boolean isClosing() {
    try {
      return closing.await(FLUSH_MS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      return true;
    }
  }

  private void flush(boolean force) throws IOException {
    if (disk.freeBytes(root) < LEAST_FREE_BYTES) {
      stopReason = "the disk is full; the recording was ended with what is on the disk";
      return;
    }
    List<Throwable> failures = new ArrayList<>(); // the other units' samples are still kept
    for (LiveTrack track : tracks) {
      try {
        track.flush(force);
      } catch (IOException | RuntimeException | Error e) {
        failures.add(e);
      }
    }
    writeMarks();
    failures.stream().findFirst().ifPresent(this::stop);
  }

  /** Marks that cannot be written wait for the next time; samples do not wait for them. */
  private void writeMarks() {
    String trouble = "";
    try {
      box.take().stream().map(this::onOurClock).forEach(this::mark);
      page.write(tracks, List.copyOf(marks));
    } catch (IOException | RuntimeException e) {
      trouble = "marks cannot be written (" + why(e) + "); they are tried again";
    }
    if (!trouble.isEmpty() && !trouble.equals(markTrouble)) {
      news.add(trouble);
    }
    markTrouble = trouble;
  }

  private void tried(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException e) {
      news.add("could not be finished: " + why(e));
    }
  }

  private void stop(Throwable cause) {
    stopReason =
        "could not write (" + why(cause) + "); the recording was ended with what is on the disk";
  }

  private static String why(Throwable e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
