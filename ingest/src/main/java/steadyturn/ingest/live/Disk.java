package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** What a recorder asks of the disk while its tables grow; a test stands in for a bad one. */
interface Disk {

  /** Bytes that can still be written below a folder. */
  default long freeBytes(Path root) throws IOException {
    return Files.getFileStore(root).getUsableSpace();
  }

  /**
   * Lays a block behind the first so many bytes of a file, which are whole lines.
   *
   * @param force whether the disk must keep it before this returns
   */
  default void append(Path file, long goodBytes, ByteBuffer block, boolean force)
      throws IOException {
    try (FileChannel out = FileChannel.open(file, StandardOpenOption.WRITE)) {
      out.position(goodBytes);
      while (block.hasRemaining()) {
        out.write(block);
      }
      if (force) {
        out.force(false);
      }
    }
  }

  /** Takes off what lies behind the whole lines of a file. */
  default void cutBack(Path file, long goodBytes) throws IOException {
    try (FileChannel out = FileChannel.open(file, StandardOpenOption.WRITE)) {
      out.truncate(goodBytes);
    }
  }
}
