package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.util.function.Consumer;

/** A real channel that tells when bytes are written and when they are forced to the disk. */
final class WatchedChannel extends FileChannel {

  private final FileChannel real;
  private final Consumer<String> diary;

  WatchedChannel(FileChannel real, Consumer<String> diary) {
    this.real = real;
    this.diary = diary;
  }

  @Override
  public int write(ByteBuffer src) throws IOException {
    diary.accept("write");
    return real.write(src);
  }

  @Override
  public long write(ByteBuffer[] srcs, int offset, int length) throws IOException {
    diary.accept("write");
    return real.write(srcs, offset, length);
  }

  @Override
  public int write(ByteBuffer src, long position) throws IOException {
    diary.accept("write");
    return real.write(src, position);
  }

  @Override
  public void force(boolean metaData) throws IOException {
    diary.accept("force");
    real.force(metaData);
  }

  @Override
  public int read(ByteBuffer dst) throws IOException {
    return real.read(dst);
  }

  @Override
  public long read(ByteBuffer[] dsts, int offset, int length) throws IOException {
    return real.read(dsts, offset, length);
  }

  @Override
  public int read(ByteBuffer dst, long position) throws IOException {
    return real.read(dst, position);
  }

  @Override
  public long position() throws IOException {
    return real.position();
  }

  @Override
  public FileChannel position(long newPosition) throws IOException {
    real.position(newPosition);
    return this;
  }

  @Override
  public long size() throws IOException {
    return real.size();
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    real.truncate(size);
    return this;
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel target) throws IOException {
    return real.transferTo(position, count, target);
  }

  @Override
  public long transferFrom(ReadableByteChannel src, long position, long count) throws IOException {
    diary.accept("write");
    return real.transferFrom(src, position, count);
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    return real.map(mode, position, size);
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    return real.lock(position, size, shared);
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    return real.tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    real.close();
  }
}
