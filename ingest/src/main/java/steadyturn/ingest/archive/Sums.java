package steadyturn.ingest.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * SHA-256 sums of what units sent: motion tables with their channels and rates, which never change
 * once written. Kept one file a lesson in the form that {@code sha256sum --check} reads from the
 * archive's folder. Events are left out, as a teacher may correct them.
 */
public final class Sums {

  private static final String FOLDER = "derivatives/sums";
  private static final int BLOCK_BYTES = 1 << 16;

  private Sums() {}

  /**
   * What a look at the sums of a lesson showed; paths from the archive's folder.
   *
   * @param same how many files are as they were
   * @param changed files that are not
   * @param missing files that are gone
   * @param unknown files that have no sum yet
   */
  public record Look(int same, List<Path> changed, List<Path> missing, List<Path> unknown) {

    public boolean isSound() {
      return changed.isEmpty() && missing.isEmpty();
    }
  }

  /** Keeps the sums of files of a lesson that have none yet; returns how many were added. */
  public static int keep(Path archive, LessonEntry lesson) {
    Path root = archive.toAbsolutePath().normalize();
    return ArchiveLock.whileWriting(
        root,
        () -> {
          Map<Path, String> kept = kept(root, lesson);
          int before = kept.size();
          for (Path file : files(root, lesson)) {
            kept.computeIfAbsent(file, f -> of(root.resolve(f)));
          }
          if (kept.size() > before) {
            DatasetFiles.derivatives(root, "sums", "1");
            StringBuilder text = new StringBuilder();
            kept.forEach(
                (file, sum) -> text.append(sum).append("  ").append(slashed(file)).append('\n'));
            WholeFile.write(place(root, lesson), text.toString());
          }
          return kept.size() - before;
        });
  }

  /** Compares the files of a lesson with their sums. */
  public static Look look(Path archive, LessonEntry lesson) {
    Path root = archive.toAbsolutePath().normalize();
    Map<Path, String> kept = kept(root, lesson);
    List<Path> unknown = new ArrayList<>(files(root, lesson));
    unknown.removeAll(kept.keySet());
    List<Path> changed = new ArrayList<>();
    List<Path> missing = new ArrayList<>();
    kept.forEach(
        (file, sum) -> {
          if (!Files.exists(root.resolve(file))) {
            missing.add(file);
          } else if (!of(root.resolve(file)).equals(sum)) {
            changed.add(file);
          }
        });
    return new Look(kept.size() - changed.size() - missing.size(), changed, missing, unknown);
  }

  private static Path place(Path root, LessonEntry lesson) {
    return root.resolve(FOLDER).resolve(lesson.id() + ".sha256");
  }

  private static Map<Path, String> kept(Path root, LessonEntry lesson) {
    Map<Path, String> kept = new TreeMap<>();
    Path place = place(root, lesson);
    if (Files.exists(place)) {
      String text = new String(ArchiveWalk.bytes(place), StandardCharsets.UTF_8);
      for (String line : text.lines().toList()) {
        if (!line.matches("[0-9a-f]{64}  .+")) {
          throw RecordingException.of(place, "is no list of sums. Take it away to begin anew.");
        }
        kept.put(Path.of(line.substring(66)), line.substring(0, 64));
      }
    }
    return kept;
  }

  private static List<Path> files(Path root, LessonEntry lesson) {
    Path folder = root.resolve("sub-" + lesson.player());
    Path its = lesson.lesson().isEmpty() ? folder : folder.resolve("ses-" + lesson.lesson());
    return ArchiveWalk.files(its).stream()
        .filter(
            f -> String.valueOf(f.getFileName()).matches("[^.].*_(motion|channels)\\.(tsv|json)"))
        .map(root::relativize)
        .toList();
  }

  static String slashed(Path file) {
    return file.toString().replace('\\', '/');
  }

  static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java machine has it
    }
  }

  /** The SHA-256 sum of a file (FIPS 180-4), in hexadecimal digits. */
  static String of(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      MessageDigest digest = sha256();
      byte[] block = new byte[BLOCK_BYTES];
      for (int read = in.read(block); read >= 0; read = in.read(block)) {
        digest.update(block, 0, read);
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }
}
