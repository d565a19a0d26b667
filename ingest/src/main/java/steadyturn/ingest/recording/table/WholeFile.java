package steadyturn.ingest.recording.table;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file so that it is there whole or not at all: into a hidden neighbour first, which takes
 * the name when it is complete.
 */
public final class WholeFile {

  private static final int BUFFER_BYTES = 1 << 16;

  private WholeFile() {}

  /** What puts bytes into a file. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /** Writes text as UTF-8. */
  public static void write(Path file, String text) {
    write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Writes bytes, making the folders on the way. */
  public static void write(Path file, Content content) {
    Path folder = file.toAbsolutePath().normalize().getParent();
    if (folder == null) {
      throw RecordingException.of(file, "is no file name. Name a file in a folder.");
    }
    Path growing = folder.resolve("." + file.getFileName() + ".part");
    try {
      Files.createDirectories(folder);
      try (OutputStream out =
          new BufferedOutputStream(Files.newOutputStream(growing), BUFFER_BYTES)) {
        content.writeTo(out);
      }
      settle(growing);
      rename(growing, file);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private static void settle(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  private static void rename(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
