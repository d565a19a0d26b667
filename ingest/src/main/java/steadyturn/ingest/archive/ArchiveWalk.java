package steadyturn.ingest.archive;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import steadyturn.ingest.recording.table.RecordingException;

/** Goes through every file of an archive, hidden ones included; links are not followed. */
final class ArchiveWalk {

  /** Motion tables hold numbers alone; other texts of this size are none that a person wrote. */
  private static final long LARGEST_TEXT_BYTES = 64_000_000;

  private ArchiveWalk() {}

  /** Files and folders that are such, and nothing of what lies in such a folder. */
  static List<Path> topmost(Path root, Predicate<Path> such) {
    List<Path> found = new ArrayList<>();
    walk(
        root,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes facts) {
            if (!folder.equals(root) && such.test(folder)) {
              found.add(folder);
              return FileVisitResult.SKIP_SUBTREE;
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes facts) {
            if (such.test(file)) {
              found.add(file);
            }
            return FileVisitResult.CONTINUE;
          }
        });
    return found;
  }

  /** Every file by name. */
  static List<Path> files(Path root) {
    List<Path> found = new ArrayList<>();
    walk(
        root,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes facts) {
            found.add(file);
            return FileVisitResult.CONTINUE;
          }
        });
    found.sort(null);
    return found;
  }

  /** Removes a file, or a folder with all that is in it. */
  static int erase(Path top) {
    int[] files = {0};
    walk(
        top,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes facts)
              throws IOException {
            Files.deleteIfExists(file);
            files[0]++;
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException broken)
              throws IOException {
            Files.deleteIfExists(folder);
            return FileVisitResult.CONTINUE;
          }
        });
    return files[0];
  }

  private static void walk(Path from, SimpleFileVisitor<Path> visitor) {
    if (!Files.exists(from, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    try {
      Files.walkFileTree(from, visitor);
    } catch (IOException e) {
      throw RecordingException.io(from, e);
    }
  }

  static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** The file as text; empty where it is none (or too large for one). */
  static Optional<String> text(Path file) {
    try {
      if (Files.size(file) > LARGEST_TEXT_BYTES) {
        return Optional.empty();
      }
      String text = Files.readString(file, StandardCharsets.UTF_8);
      return text.indexOf('\0') < 0 ? Optional.of(text) : Optional.empty();
    } catch (CharacterCodingException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }
}
