package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Makes files and folders that only their owner may read: they tell about a person. What is there
 * already keeps the rights it has; where the file system knows no such rights, nothing is set.
 */
public final class PrivateFiles {

  private static final FileAttribute<?>[] NONE = {};

  private PrivateFiles() {}

  /** Makes a folder and those above it, where they are not there. */
  public static Path folders(Path folder) throws IOException {
    return Files.createDirectories(folder.toAbsolutePath(), rights(folder, "rwx------"));
  }

  /** Opens a file, making it where the options say so. */
  public static FileChannel open(Path file, OpenOption... options) throws IOException {
    return FileChannel.open(file, Set.of(options), rights(file, "rw-------"));
  }

  private static FileAttribute<?>[] rights(Path path, String words) {
    return isPosix(path)
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(words))
        }
        : NONE;
  }

  static boolean isPosix(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }
}
