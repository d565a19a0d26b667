package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** A disk that runs full or breaks when it is told to; until then a good one. */
final class BadDisk implements Disk {

  volatile long freeBytes;

  /** How many more blocks are written whole; the next one breaks in its middle. */
  final AtomicInteger goodBlocks = new AtomicInteger(Integer.MAX_VALUE);

  /** Whether not even the half-written block can be taken off again. */
  volatile boolean isDead;

  /** What is thrown when asked for the room that is left. */
  volatile @Nullable RuntimeException surprise;

  BadDisk() {
    this(1L << 30);
  }

  BadDisk(long freeBytes) {
    this.freeBytes = freeBytes;
  }

  @Override
  public long freeBytes(Path root) {
    RuntimeException now = surprise;
    if (now != null) {
      throw now;
    }
    return freeBytes;
  }

  @Override
  public void append(Path file, long goodBytes, ByteBuffer block, boolean force)
      throws IOException {
    int left = goodBlocks.getAndDecrement();
    if (left > 0) {
      Disk.super.append(file, goodBytes, block, force);
      return;
    }
    ByteBuffer half = block.slice(0, block.remaining() / 2);
    Disk.super.append(file, goodBytes, half, force);
    throw new IOException("No space left on device");
  }

  @Override
  public void cutBack(Path file, long goodBytes) throws IOException {
    if (isDead) {
      throw new IOException("Input/output error");
    }
    Disk.super.cutBack(file, goodBytes);
  }
}
