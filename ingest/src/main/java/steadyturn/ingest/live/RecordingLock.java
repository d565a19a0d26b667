package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import steadyturn.ingest.recording.table.RecordingException;

/** Keeps a second recorder out of a dataset; a crash opens the lock by itself. */
final class RecordingLock {

  private static final String NAME = ".steadyturn-recording";

  private final FileChannel channel;

  private RecordingLock(FileChannel channel) {
    this.channel = channel;
  }

  static RecordingLock of(Path root) throws IOException {
    FileChannel channel =
        FileChannel.open(root.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    if (lock(channel).isEmpty()) {
      channel.close();
      throw RecordingException.of(
          root, "another program is recording into it. End that one, or choose another folder.");
    }
    return new RecordingLock(channel);
  }

  private static Optional<FileLock> lock(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      return Optional.empty();
    }
  }

  void release() {
    try {
      channel.close();
    } catch (IOException e) {
      throw RecordingException.io(Path.of(NAME), e);
    }
  }
}
