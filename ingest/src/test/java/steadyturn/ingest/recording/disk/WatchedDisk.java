package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.StreamSupport;

/**
 * The real disk behind a wall that keeps a diary of what is asked of it: {@code write name}, {@code
 * force name}, {@code move from to}; an unfinished neighbour is called {@code part}.
 */
public final class WatchedDisk extends FileSystemProvider {

  public final List<String> diary = new ArrayList<>();
  private final FileSystemProvider real;
  private final FileSystem system;

  private WatchedDisk(Path folder) {
    real = folder.getFileSystem().provider();
    system = new Behind(folder.getFileSystem());
  }

  public static WatchedDisk over(Path folder) {
    return new WatchedDisk(folder);
  }

  /** A path of the real disk as one of this. */
  public Path path(Path realPath) {
    return (Path)
        Proxy.newProxyInstance(
            WatchedDisk.class.getClassLoader(),
            new Class<?>[] {Path.class, Walled.class},
            (self, method, args) -> {
              if (method.getName().equals("behind")) {
                return realPath;
              }
              if (method.getName().equals("getFileSystem")) {
                return system;
              }
              Object[] plain =
                  args == null ? null : Arrays.stream(args).map(WatchedDisk::plain).toArray();
              try {
                Object result = method.invoke(realPath, plain);
                return result instanceof Path p ? path(p) : result;
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }

  /** What a path of this disk really is. */
  private interface Walled {
    Path behind();
  }

  private static Object plain(Object each) {
    return each instanceof Walled walled ? walled.behind() : each;
  }

  private static Path plain(Path path) {
    return path instanceof Walled walled ? walled.behind() : path;
  }

  private static String name(Path path) {
    String name = String.valueOf(path.getFileName());
    return name.startsWith(".") && name.endsWith(".part") ? "part" : name;
  }

  private FileChannel watched(Path path, FileChannel channel) {
    return new WatchedChannel(
        channel,
        what -> {
          String entry = what + " " + name(path);
          if (diary.isEmpty() || !diary.get(diary.size() - 1).equals(entry)) {
            diary.add(entry);
          }
        });
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attrs) throws IOException {
    return watched(path, real.newFileChannel(plain(path), options, attrs));
  }

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attrs) throws IOException {
    return newFileChannel(path, options, attrs);
  }

  @Override
  public void move(Path from, Path to, CopyOption... options) throws IOException {
    diary.add("move " + name(from) + " " + name(to));
    real.move(plain(from), plain(to), options);
  }

  @Override
  public void copy(Path from, Path to, CopyOption... options) throws IOException {
    diary.add("copy " + name(from) + " " + name(to));
    real.copy(plain(from), plain(to), options);
  }

  @Override
  public void createDirectory(Path folder, FileAttribute<?>... attrs) throws IOException {
    real.createDirectory(plain(folder), attrs);
  }

  @Override
  public void delete(Path path) throws IOException {
    real.delete(plain(path));
  }

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    DirectoryStream<Path> entries =
        real.newDirectoryStream(plain(folder), p -> filter.accept(path(p)));
    List<Path> walled = StreamSupport.stream(entries.spliterator(), false).map(this::path).toList();
    entries.close();
    return new DirectoryStream<>() {
      @Override
      public java.util.Iterator<Path> iterator() {
        return walled.iterator();
      }

      @Override
      public void close() {}
    };
  }

  @Override
  public boolean isSameFile(Path a, Path b) throws IOException {
    return real.isSameFile(plain(a), plain(b));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return real.isHidden(plain(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return real.getFileStore(plain(path));
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    real.checkAccess(plain(path), modes);
  }

  @Override
  public <V extends FileAttributeView> V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    return real.getFileAttributeView(plain(path), type, options);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return real.readAttributes(plain(path), type, options);
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
      throws IOException {
    return real.readAttributes(plain(path), names, options);
  }

  @Override
  public void setAttribute(Path path, String name, Object value, LinkOption... options)
      throws IOException {
    real.setAttribute(plain(path), name, value, options);
  }

  @Override
  public String getScheme() {
    return "watched";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> env) {
    return system;
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    return system;
  }

  @Override
  public Path getPath(URI uri) {
    return path(real.getPath(uri));
  }

  /** The real file system, whose paths are walled. */
  private final class Behind extends FileSystem {

    private final FileSystem plain;

    Behind(FileSystem plain) {
      this.plain = plain;
    }

    @Override
    public FileSystemProvider provider() {
      return WatchedDisk.this;
    }

    @Override
    public Path getPath(String first, String... more) {
      return path(plain.getPath(first, more));
    }

    @Override
    public void close() {}

    @Override
    public boolean isOpen() {
      return true;
    }

    @Override
    public boolean isReadOnly() {
      return false;
    }

    @Override
    public String getSeparator() {
      return plain.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
      return List.of();
    }

    @Override
    public Iterable<FileStore> getFileStores() {
      return plain.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
      return plain.supportedFileAttributeViews();
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
      return p -> plain.getPathMatcher(pattern).matches(WatchedDisk.plain(p));
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
      return plain.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() throws IOException {
      return plain.newWatchService();
    }
  }
}
