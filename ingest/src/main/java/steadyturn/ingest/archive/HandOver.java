package steadyturn.ingest.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import steadyturn.ingest.kept.KeptPlace;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TableText;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * One player as one zip file: a small dataset of its own with a sum of each file, which any tool
 * that reads BIDS reads once it is unpacked.
 */
public final class HandOver {

  private static final String SUMS = "sums.sha256";
  private static final String STAGING = ".steadyturn-taking-";

  /** No table packs better than this; what claims to is no archive but a trap. */
  private static final long LARGEST_RATIO = 200;

  private HandOver() {}

  /** Packs a player; returns how many files went in. */
  public static int pack(Path archive, String label, Path zip) {
    Path root = archive.toAbsolutePath().normalize();
    PlayerBook.read(root, new ArrayList<>()).require(label);
    PlayerNames names = new PlayerNames(label, "");
    List<Path> files = new ArrayList<>();
    for (Path own : ArchiveWalk.topmost(root, names::isOn)) {
      files.addAll(ArchiveWalk.files(own));
    }
    files.removeIf(file -> KeptPlace.isKept(file) || file.getFileName().toString().startsWith("."));
    files.remove(zip.toAbsolutePath().normalize());
    Map<String, byte[]> made = made(root, label);
    WholeFile.write(zip, out -> write(root, files, made, out));
    return files.size();
  }

  /** The files at the top of the small dataset. */
  private static Map<String, byte[]> made(Path root, String label) {
    Map<String, byte[]> made = new TreeMap<>();
    for (String name : List.of("dataset_description.json", "participants.json")) {
      if (Files.exists(root.resolve(name))) {
        made.put(name, ArchiveWalk.bytes(root.resolve(name)));
      }
    }
    TableText table = TableText.read(root.resolve(Participants.FILE));
    String id = "sub-" + label;
    table.dropWhere(cell -> cell.startsWith("sub-") && !cell.equals(id));
    made.put(Participants.FILE, table.text().getBytes(StandardCharsets.UTF_8));
    return made;
  }

  private static void write(Path root, List<Path> files, Map<String, byte[]> made, OutputStream out)
      throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
    StringBuilder sums = new StringBuilder();
    for (Map.Entry<String, byte[]> file : made.entrySet()) {
      put(zip, file.getKey(), file.getValue());
      sums.append(Sums.of(file.getValue())).append("  ").append(file.getKey()).append('\n');
    }
    for (Path file : files) {
      String name = Sums.slashed(root.relativize(file));
      zip.putNextEntry(new ZipEntry(name));
      Files.copy(file, zip);
      zip.closeEntry();
      sums.append(Sums.of(file)).append("  ").append(name).append('\n');
    }
    put(zip, SUMS, sums.toString().getBytes(StandardCharsets.UTF_8));
    zip.finish();
  }

  private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(bytes);
    zip.closeEntry();
  }

  /** A player who was taken in. */
  public record Taken(String label, int files) {}

  /**
   * Takes a packed player into an archive. Files that are there already and the same stay; nothing
   * is written where a sum is wrong or a file is there with another content.
   */
  public static Taken take(Path zip, Path archive) {
    Path root = archive.toAbsolutePath().normalize();
    Path staging = root.resolve(Leftovers.beside(STAGING));
    return ArchiveLock.whileWriting(
        root,
        () -> {
          Leftovers.like(root, STAGING).forEach(ArchiveWalk::erase);
          try {
            Map<String, String> sums = unpacked(zip, staging);
            String label = label(zip, staging);
            requireRoom(staging, root, label, sums);
            DatasetFiles.ensure(root, "Lessons");
            return new Taken(label, moved(staging, root, label));
          } finally {
            ArchiveWalk.erase(staging);
          }
        });
  }

  private static Map<String, String> unpacked(Path zip, Path staging) {
    Map<String, String> sums = new LinkedHashMap<>();
    try (ZipFile packed = new ZipFile(zip.toFile(), StandardCharsets.UTF_8)) {
      for (ZipEntry entry : Collections.list(packed.entries())) {
        if (!entry.isDirectory()) {
          Path target = staging.resolve(entry.getName()).normalize();
          if (!target.startsWith(staging) || entry.getName().contains("\\")) {
            throw broken(zip, "names a file outside itself (" + entry.getName() + ")");
          }
          if (entry.getSize() > LARGEST_RATIO * Math.max(entry.getCompressedSize(), 1)) {
            throw broken(zip, "holds a file that grows without measure (" + entry.getName() + ")");
          }
          try (InputStream in = packed.getInputStream(entry)) {
            WholeFile.write(target, in::transferTo);
          }
        }
      }
    } catch (IOException e) {
      throw broken(zip, "cannot be read as a zip file (" + e.getMessage() + ")");
    }
    Path list = staging.resolve(SUMS);
    if (!Files.exists(list)) {
      throw broken(zip, "lacks " + SUMS);
    }
    new String(ArchiveWalk.bytes(list), StandardCharsets.UTF_8)
        .lines()
        .filter(line -> line.length() > 66)
        .forEach(line -> sums.put(line.substring(66), line.substring(0, 64)));
    ArchiveWalk.erase(list);
    return sums;
  }

  private static RecordingException broken(Path zip, String found) {
    return RecordingException.of(
        zip, found + ". Nothing was taken in. Have it packed again by ./steadyturn players pack.");
  }

  private static String label(Path zip, Path staging) {
    List<String> labels =
        Leftovers.like(staging, "sub-").stream()
            .map(f -> String.valueOf(f.getFileName()).substring("sub-".length()))
            .filter(RunLabel::isLabel)
            .toList();
    if (labels.size() != 1) {
      throw broken(zip, "holds " + labels.size() + " players where one is expected");
    }
    return labels.get(0);
  }

  private static void requireRoom(Path staging, Path root, String label, Map<String, String> sums) {
    Participants.handedness(staging, label)
        .flatMap(side -> Participants.handedness(root, label).filter(here -> here != side))
        .ifPresent(
            here -> {
              throw RecordingException.of(
                  root,
                  "has another player \""
                      + label
                      + "\", who swings "
                      + here.word()
                      + "-handed. Rename one of the two first.");
            });
    for (Path file : ArchiveWalk.files(staging)) {
      Path relative = staging.relativize(file);
      String sum = Sums.of(file);
      if (!sum.equals(sums.remove(Sums.slashed(relative)))) {
        throw RecordingException.of(
            relative, "was changed on the way. Nothing was taken in. Have it packed again.");
      }
      Path target = root.resolve(relative);
      if (isOwn(relative, label) && Files.exists(target) && !Sums.of(target).equals(sum)) {
        throw RecordingException.of(
            target, "is there with another content. Rename one of the two players first.");
      }
    }
    if (!sums.isEmpty()) {
      throw RecordingException.of(
          Path.of(sums.keySet().iterator().next()),
          "was lost on the way. Nothing was taken in. Have it packed again.");
    }
  }

  /** What was kept elsewhere is not taken in: it says of another archive's files that they hold. */
  private static boolean isOwn(Path relative, String label) {
    if (KeptPlace.isKept(relative)) {
      return false;
    }
    PlayerNames names = new PlayerNames(label, "");
    for (Path part : relative) {
      if (names.isOn(part)) {
        return true;
      }
    }
    return false;
  }

  private static int moved(Path staging, Path root, String label) {
    int files = 0;
    for (Path file : ArchiveWalk.files(staging)) {
      Path relative = staging.relativize(file);
      Path target = root.resolve(relative);
      if (isOwn(relative, label) && !Files.exists(target)) {
        WholeFile.folder(target);
        WholeFile.move(file, target);
        files++;
      }
    }
    Map<String, String> row =
        Participants.rows(staging, new ArrayList<>()).getOrDefault(label, Map.of());
    if (!row.isEmpty()) {
      Path players = root.resolve(Participants.FILE);
      TableText table = TableText.read(players);
      table.fill(row);
      WholeFile.write(players, table.text());
    }
    return files;
  }
}
