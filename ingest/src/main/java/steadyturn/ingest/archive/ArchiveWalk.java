package steadyturn.ingest.archive;

import java.io.IOException;
import java.io.InputStream;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import steadyturn.ingest.recording.table.RecordingException;

/** Goes through every file of an archive, hidden ones included; links are not followed. */
final class ArchiveWalk {

  /** Motion tables hold numbers alone; other texts of this size are none that a person wrote. */
  private static final long LARGEST_TEXT_BYTES = 64_000_000;

  private static final int WINDOW_BYTES = 1 << 20;

  /** Longer than any name. */
  private static final int OVERLAP_BYTES = 1 << 12;

  /** A letter of UTF-8 has four bytes at most. */
  private static final int CUT_LETTER = 4;

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

  /** Whether a file's letters hold what is looked for; read piece by piece, however large it is. */
  static boolean holds(Path file, Pattern words) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] window = new byte[WINDOW_BYTES];
      int kept = 0;
      boolean isFirst = true;
      boolean isLast = false;
      while (!isLast) {
        int size = kept + in.readNBytes(window, kept, WINDOW_BYTES - kept);
        isLast = size < WINDOW_BYTES;
        if (within(letters(window, size), words, isFirst, isLast)) {
          return true;
        }
        isFirst = false;
        kept = Math.min(size, OVERLAP_BYTES);
        System.arraycopy(window, size - kept, window, 0, kept);
      }
      return false;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  /** In UTF-8 a name stands as it is; what is none, but for its cut edges, is read as Latin-1. */
  private static String letters(byte[] window, int size) {
    String letters = new String(window, 0, size, StandardCharsets.UTF_8);
    int broken = letters.indexOf('\ufffd', Math.min(CUT_LETTER, letters.length()));
    return broken < 0 || broken >= letters.length() - CUT_LETTER
        ? letters
        : new String(window, 0, size, StandardCharsets.ISO_8859_1);
  }

  /** A find at an edge may be part of a longer word; another window shows it whole. */
  private static boolean within(String letters, Pattern words, boolean isFirst, boolean isLast) {
    Matcher found = words.matcher(letters);
    while (found.find()) {
      boolean fromEdge = found.start() == 0 && !isFirst;
      boolean toEdge = found.end() == letters.length() && !isLast;
      if (!fromEdge && !toEdge) {
        return true;
      }
    }
    return false;
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
