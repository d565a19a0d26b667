package steadyturn.ingest.kept;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;

/**
 * What the file system says of a file without reading it. The time of change goes with every
 * writing, and no program can set it back as it can the time of modification; where the file system
 * keeps none, only the content tells whether a file is as it was.
 *
 * @param changedNanos time of change since 1970, ns; {@link #UNKNOWN} where there is none
 * @param node the number under which the file system keeps it
 */
record FileState(long bytes, long modifiedNanos, long changedNanos, long node) {

  static final long UNKNOWN = Long.MIN_VALUE;

  /** A clock of a file system may tick as slowly as this (FAT: every 2 s). */
  private static final long SLOWEST_TICK_NANOS = 2_000_000_000;

  static FileState of(Path file) throws IOException {
    if (!file.getFileSystem().supportedFileAttributeViews().contains("unix")) {
      BasicFileAttributes facts = Files.readAttributes(file, BasicFileAttributes.class);
      return new FileState(facts.size(), nanos(facts.lastModifiedTime()), UNKNOWN, 0);
    }
    Map<String, Object> facts = Files.readAttributes(file, "unix:size,lastModifiedTime,ctime,ino");
    return new FileState(
        whole(facts, "size"),
        time(facts, "lastModifiedTime"),
        time(facts, "ctime"),
        whole(facts, "ino"));
  }

  private static long whole(Map<String, Object> facts, String name) {
    return (Long) Objects.requireNonNull(facts.get(name));
  }

  private static long time(Map<String, Object> facts, String name) {
    return nanos((FileTime) Objects.requireNonNull(facts.get(name)));
  }

  static long nanos(FileTime time) {
    return time.to(TimeUnit.NANOSECONDS);
  }

  /**
   * Whether it is for sure as it was when it was looked at, being in the same state now: the last
   * change lies so long before that look that a later one would show another time.
   */
  boolean wasSettledAt(long lookedNanos) {
    return changedNanos != UNKNOWN
        && Math.max(modifiedNanos, changedNanos) < lookedNanos - SLOWEST_TICK_NANOS;
  }
}
