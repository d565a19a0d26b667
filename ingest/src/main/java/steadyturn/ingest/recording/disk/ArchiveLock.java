package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import steadyturn.ingest.recording.table.RecordingException;

/**
 * Lets one writer at a time change an archive, and one recorder at a time record into it. A crash
 * opens both locks by itself. They are hidden files in the archive's folder, locked by the
 * operating system; as that knows processes only, threads of one process are kept apart here. A
 * writer that was killed leaves a byte in its file: the next one removes what it left half done.
 */
public final class ArchiveLock implements AutoCloseable {

  private static final String WRITING = ".steadyturn-writing";
  private static final String RECORDING = ".steadyturn-recording";
  private static final long WRITING_PATIENCE_MS = 60_000;
  private static final long RECORDING_PATIENCE_MS = 500;
  private static final long LOOK_EVERY_MS = 10;
  private static final int AT_WORK = 1;

  /** Locks of this process by their file: closing any channel of a file would open its lock. */
  private static final Map<Path, ArchiveLock> HELD = new HashMap<>();

  private final Path file;
  private final FileChannel channel;
  private final Thread holder = Thread.currentThread();

  private ArchiveLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** Keeps a second recorder out until closed. */
  public static ArchiveLock recording(Path root) {
    return take(root, RECORDING, RECORDING_PATIENCE_MS)
        .orElseThrow(
            () ->
                RecordingException.of(
                    root,
                    "another program is recording into it. End that one, or choose another"
                        + " folder."));
  }

  /** Whether someone records into an archive just now. */
  public static boolean isRecordedInto(Path root) {
    Optional<ArchiveLock> free = take(root, RECORDING, 0);
    free.ifPresent(ArchiveLock::close);
    return free.isEmpty();
  }

  /** Does some short work on an archive's files while nobody else changes them. */
  public static <T> T whileWriting(Path root, Supplier<T> work) {
    return whileWriting(root, work, WRITING_PATIENCE_MS)
        .orElseThrow(
            () ->
                RecordingException.of(
                    root,
                    "another program has been writing into it for a minute. Wait for its end, or"
                        + " end it."));
  }

  /** The same for work that gives nothing back. */
  public static void whileWriting(Path root, Runnable work) {
    whileWriting(
        root,
        () -> {
          work.run();
          return root;
        });
  }

  /** The same where nobody else is at work; empty otherwise. */
  public static <T> Optional<T> ifNobodyWrites(Path root, Supplier<T> work) {
    return whileWriting(root, work, 0);
  }

  private static <T> Optional<T> whileWriting(Path root, Supplier<T> work, long patienceMs) {
    if (isMine(root)) {
      return Optional.of(work.get());
    }
    Optional<ArchiveLock> lock = take(root, WRITING, patienceMs);
    try {
      lock.filter(ArchiveLock::isAfterAKill).ifPresent(held -> Leftovers.sweepAll(root));
      lock.ifPresent(held -> held.note(AT_WORK));
      return lock.map(held -> work.get());
    } finally {
      lock.ifPresent(held -> held.note(0));
      lock.ifPresent(ArchiveLock::close);
    }
  }

  /** Whether the one who had the lock before never came to give it back. */
  private boolean isAfterAKill() {
    try {
      return channel.size() > 0;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** Leaves a file of that many bytes to the next one: none when all is done. */
  private void note(int bytes) {
    try {
      channel.truncate(0);
      channel.write(ByteBuffer.allocate(bytes), 0);
    } catch (IOException e) {
      return; // on a full disk the work itself must go on: it may be what makes room
    }
  }

  private static boolean isMine(Path root) {
    synchronized (HELD) {
      return HELD.values().stream()
          .anyMatch(
              lock ->
                  lock.holder.equals(Thread.currentThread())
                      && lock.file.equals(lockFile(root, WRITING)));
    }
  }

  private static Path lockFile(Path root, String name) {
    try {
      return PrivateFiles.folders(root).toRealPath().resolve(name);
    } catch (IOException e) {
      throw RecordingException.io(root, e);
    }
  }

  private static Optional<ArchiveLock> take(Path root, String name, long patienceMs) {
    long untilNanos = System.nanoTime() + patienceMs * 1_000_000;
    Path file = lockFile(root, name);
    Optional<ArchiveLock> lock = tryOnce(file);
    while (lock.isEmpty() && System.nanoTime() < untilNanos) {
      try {
        Thread.sleep(LOOK_EVERY_MS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return Optional.empty();
      }
      lock = tryOnce(file);
    }
    return lock;
  }

  private static Optional<ArchiveLock> tryOnce(Path file) {
    synchronized (HELD) {
      if (HELD.containsKey(file)) {
        return Optional.empty();
      }
      try {
        FileChannel channel =
            PrivateFiles.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        if (locked(channel).isEmpty()) {
          channel.close();
          return Optional.empty();
        }
        ArchiveLock lock = new ArchiveLock(file, channel);
        HELD.put(file, lock);
        return Optional.of(lock);
      } catch (IOException e) {
        throw RecordingException.io(file, e);
      }
    }
  }

  private static Optional<FileLock> locked(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      return Optional.empty();
    }
  }

  /** Opens the lock; a second time does nothing. */
  @Override
  public void close() {
    synchronized (HELD) {
      if (HELD.remove(file, this)) {
        try {
          channel.close();
        } catch (IOException e) {
          throw RecordingException.io(file, e);
        }
      }
    }
  }
}
