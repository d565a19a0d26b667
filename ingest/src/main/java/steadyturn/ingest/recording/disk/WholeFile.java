package steadyturn.ingest.recording.disk;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import steadyturn.ingest.recording.table.RecordingException;

/**
 * Writes a file so that it is there whole or not at all: into a hidden neighbour first, which takes
 * the name when all of it is on the disk. Only the owner may read what is made anew.
 */
public final class WholeFile {

  private static final int BUFFER_BYTES = 1 << 16;

  private WholeFile() {}

  /** What puts bytes into a file. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /** What puts text into a file. */
  @FunctionalInterface
  public interface Text {
    void writeTo(Writer out) throws IOException;
  }

  /** Writes text as UTF-8. */
  public static void write(Path file, String text) {
    write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Writes text as UTF-8, as it comes. */
  public static void writeText(Path file, Text text) {
    write(
        file,
        out -> {
          Writer to = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
          text.writeTo(to);
          to.flush();
        });
  }

  /** Writes bytes, making the folders on the way. */
  public static void write(Path file, Content content) {
    Path folder = folderOf(file);
    if (file.getFileName() == null) {
      throw RecordingException.of(file, "is no file name. Name a file in a folder.");
    }
    String hidden = "." + file.getFileName() + ".";
    try {
      PrivateFiles.folders(folder);
      Leftovers.sweep(folder, hidden);
      Path growing = folder.resolve(Leftovers.beside(hidden));
      try {
        grow(growing, content);
        keepRights(file, growing);
        rename(growing, file);
        settle(folder);
      } finally {
        Files.deleteIfExists(growing);
      }
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** The folder a file lies in. */
  public static Path folderOf(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    Path parent = absolute.getParent();
    return parent == null ? absolute : parent;
  }

  /** Makes the folder of a file where it is not there. */
  public static void folder(Path file) {
    try {
      PrivateFiles.folders(folderOf(file));
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private static void grow(Path growing, Content content) throws IOException {
    try (FileChannel channel =
            PrivateFiles.open(growing, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        OutputStream out =
            new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER_BYTES)) {
      content.writeTo(out);
      out.flush();
      channel.force(true);
    }
  }

  private static void keepRights(Path there, Path fresh) throws IOException {
    if (PrivateFiles.isPosix(there) && Files.exists(there)) {
      Files.setPosixFilePermissions(fresh, Files.getPosixFilePermissions(there));
    }
  }

  /** Gives a whole file its place. */
  public static void move(Path whole, Path file) {
    try {
      rename(whole, file);
      settle(folderOf(file));
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private static void rename(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Has the disk keep the names in a folder too, where a folder can be opened for that. */
  private static void settle(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      return; // Windows opens no folder; there a rename is kept by itself
    }
  }
}
