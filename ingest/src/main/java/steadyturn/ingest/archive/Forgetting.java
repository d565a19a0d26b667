package steadyturn.ingest.archive;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;

/**
 * Erases every trace of a player: recordings, what was computed from them, pages, lines in tables,
 * the name in other people's files. What is to be done is noted first, so that a run that was cut
 * off is ended by the next one. Motion tables of others hold numbers alone and are not looked into.
 */
public final class Forgetting {

  private static final String INTENT = ".steadyturn-forgetting";

  private final Path root;
  private final PlayerNames names;

  private Forgetting(Path root, PlayerNames names) {
    this.root = root;
    this.names = names;
  }

  /**
   * Forgets a player.
   *
   * @param archive the archive's folder
   * @param label the player's label
   * @throws RecordingException where nobody of that label is there, or someone records just now
   */
  public static Forgotten forget(Path archive, String label) {
    Path root = archive.toAbsolutePath().normalize();
    if (ArchiveLock.isRecordedInto(root)) {
      throw RecordingException.of(root, "is being recorded into. End the recording first.");
    }
    return ArchiveLock.whileWriting(root, () -> begin(root, label).all());
  }

  /** The label of a player whose forgetting was cut off. */
  public static Optional<String> unfinished(Path archive) {
    return noted(archive.toAbsolutePath().normalize()).map(PlayerNames::label);
  }

  static Forgetting begin(Path root, String label) {
    Optional<PlayerNames> cut = noted(root).filter(names -> names.label().equals(label));
    if (cut.isEmpty()) {
      PlayerEntry player = PlayerBook.read(root, new ArrayList<>()).require(label);
      String name = player.shownName().equals(label) ? "" : player.shownName();
      cut = Optional.of(new PlayerNames(label, name));
      WholeFile.write(root.resolve(INTENT), label + "\n" + name + "\n");
    }
    return new Forgetting(root, cut.get());
  }

  private static Optional<PlayerNames> noted(Path root) {
    Path intent = root.resolve(INTENT);
    if (!Files.exists(intent)) {
      return Optional.empty();
    }
    List<String> lines =
        new String(ArchiveWalk.bytes(intent), StandardCharsets.UTF_8).lines().toList();
    return lines.isEmpty() || !RunLabel.isLabel(lines.get(0))
        ? Optional.empty()
        : Optional.of(new PlayerNames(lines.get(0), lines.size() > 1 ? lines.get(1) : ""));
  }

  /** The line among the players goes last: until then the player can be named. */
  private Forgotten all() {
    int files = 0;
    for (Path own : ArchiveWalk.topmost(root, names::isOn)) {
      files += ArchiveWalk.erase(own);
    }
    NameEraser eraser = new NameEraser(names);
    List<Path> changed = new ArrayList<>();
    for (Path file : ArchiveWalk.files(root)) {
      if (isToLookInto(file) && !isPlayers(file)) {
        files += clear(file, eraser, changed);
      }
    }
    Path players = root.resolve(Participants.FILE);
    if (Files.exists(players)) {
      if (eraser.isIn(players)) {
        eraser.clearTable(players);
      }
    }
    List<Path> left = left(eraser);
    if (left.isEmpty()) {
      ArchiveWalk.erase(root.resolve(INTENT));
    }
    return new Forgotten(files, eraser.rowsErased(), changed, left);
  }

  /** Clears one file; returns 1 where it had to go as a whole. */
  private int clear(Path file, NameEraser eraser, List<Path> changed) {
    if (!eraser.isIn(file)) {
      return 0;
    }
    Optional<String> text = ArchiveWalk.text(file);
    String name = String.valueOf(file.getFileName());
    boolean isPage = isComputed(file) && !(text.isPresent() && name.matches(".*\\.(tsv|json)"));
    if (isPage || name.matches("\\..+\\.part")) {
      return ArchiveWalk.erase(file); // can be made again; or was left by a program that was killed
    }
    if (name.endsWith(".tsv")) {
      eraser.clearTable(file);
      changed.add(root.relativize(file));
    } else if (text.isPresent()) {
      eraser.clear(file, text.get());
      changed.add(root.relativize(file));
    }
    return 0;
  }

  private boolean isComputed(Path file) {
    return file.startsWith(root.resolve("derivatives"));
  }

  private boolean isPlayers(Path file) {
    return file.equals(root.resolve(Participants.FILE));
  }

  private static boolean isToLookInto(Path file) {
    String name = String.valueOf(file.getFileName());
    return !name.equals(INTENT) && !name.endsWith("_motion.tsv");
  }

  private List<Path> left(NameEraser eraser) {
    List<Path> left = new ArrayList<>(ArchiveWalk.topmost(root, names::isOn));
    for (Path file : ArchiveWalk.files(root)) {
      if (isToLookInto(file) && eraser.isIn(file)) {
        left.add(file);
      }
    }
    return left.stream().map(root::relativize).toList();
  }
}
