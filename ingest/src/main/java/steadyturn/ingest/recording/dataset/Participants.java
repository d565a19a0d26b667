package steadyturn.ingest.recording.dataset;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TableText;
import steadyturn.ingest.recording.table.TextTable;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** The facts of the players in {@code participants.tsv}. */
public final class Participants {

  public static final String FILE = "participants.tsv";

  private static final String ID = "participant_id";

  private Participants() {}

  /** The player's facts. Without a side there is no analysis, so a missing one is refused. */
  public static Player player(Path root, String label, List<String> notices) {
    Path file = root.resolve(FILE);
    if (!Files.exists(file)) {
      String side = "so the side sub-" + label + " swings from is not known.";
      String line = "a line participant_id<tab>handedness, below it sub-" + label;
      throw RecordingException.of(
          file, "does not exist, " + side + " Write it: " + line + "<tab>right (or left).");
    }
    TextTable table = TextTable.read(file, notices);
    TextTable.Row row = row(table, label).orElseThrow(() -> missingRow(file, label));
    return new Player(
        label,
        handedness(table, row, label),
        size(table, row, "pelvis_width"),
        size(table, row, "pelvis_depth"),
        size(table, row, "stature"),
        size(table, row, "pelvis_depth_worn"));
  }

  /** The player's side, where it is told in any way that can be read. */
  public static Optional<Handedness> handedness(Path root, String label) {
    Path file = root.resolve(FILE);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    TextTable table = TextTable.read(file, new ArrayList<>());
    return row(table, label).flatMap(row -> side(table.text(row, "handedness")));
  }

  private static Optional<TextTable.Row> row(TextTable table, String label) {
    return table.rows().stream().filter(r -> table.text(r, ID).equals("sub-" + label)).findFirst();
  }

  private static RecordingException missingRow(Path file, String label) {
    String advice =
        "Add one with the player's handedness, right or left (the side they swing from).";
    return RecordingException.of(file, "has no row for sub-" + label + ". " + advice);
  }

  private static Handedness handedness(TextTable table, TextTable.Row row, String label) {
    String word = table.text(row, "handedness");
    return side(word)
        .orElseThrow(
            () ->
                RecordingException.at(
                    table.file(),
                    row.line(),
                    "handedness",
                    (word.isEmpty() ? "sub-" + label + " has none" : "\"" + word + "\" is no side")
                        + ". Write right or left: the side the player swings from."));
  }

  /** The side that a cell tells. */
  public static Optional<Handedness> side(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "right", "r" -> Optional.of(Handedness.RIGHT);
      case "left", "l" -> Optional.of(Handedness.LEFT);
      default -> Optional.empty();
    };
  }

  private static OptionalDouble size(TextTable table, TextTable.Row row, String column) {
    double sizeMm = table.number(row, column);
    if (Double.isNaN(sizeMm)) {
      return OptionalDouble.empty();
    }
    if (!(sizeMm > 0)) {
      throw RecordingException.at(
          table.file(), row.line(), column, sizeMm + " mm is no size. Write it in mm, or n/a.");
    }
    return OptionalDouble.of(sizeMm);
  }

  /** Every player's cells by column, by label; what is missing reads as an empty text. */
  public static Map<String, Map<String, String>> rows(Path root, List<String> notices) {
    Map<String, Map<String, String>> rows = new LinkedHashMap<>();
    Path file = root.resolve(FILE);
    if (!Files.exists(file)) {
      return rows;
    }
    TextTable table = TextTable.read(file, notices);
    for (TextTable.Row row : table.rows()) {
      String id = table.text(row, ID);
      if (id.startsWith("sub-")) {
        Map<String, String> cells = new LinkedHashMap<>();
        table.header().forEach(column -> cells.put(column, table.text(row, column)));
        rows.put(id.substring("sub-".length()), cells);
      }
    }
    return rows;
  }

  /** Writes cells of a player's row; other cells and rows stay as they are. */
  public static void put(Path root, String label, Map<String, String> cells) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put(ID, "sub-" + label);
    row.putAll(cells);
    ArchiveLock.whileWriting(
        root,
        () -> {
          TableText table = TableText.read(root.resolve(FILE));
          table.put(row);
          WholeFile.write(root.resolve(FILE), table.text());
        });
  }

  /**
   * Adds a player's row, or fills what it lacks; other rows stay as they are.
   *
   * @throws RecordingException when the file already tells another side for this player
   */
  public static void add(Path root, Player player) {
    ArchiveLock.whileWriting(root, () -> addAlone(root, player));
  }

  private static void addAlone(Path root, Player player) {
    Path file = root.resolve(FILE);
    handedness(root, player.id())
        .filter(side -> side != player.handed())
        .ifPresent(
            side -> {
              String before = player.id() + " swings " + side.word() + "-handed";
              String now = player.handed().word() + "-handed";
              throw RecordingException.of(
                  file,
                  ("says that sub-" + before + ", the new recording says " + now)
                      + ". Correct one of the two, or use another player label.");
            });
    Map<String, String> row = new LinkedHashMap<>();
    row.put(ID, "sub-" + player.id());
    row.put("handedness", player.handed().word());
    row.put("pelvis_width", sizeText(player.pelvisWidthMm()));
    row.put("pelvis_depth", sizeText(player.pelvisDepthMm()));
    row.put("stature", sizeText(player.statureMm()));
    if (player.wornDepthMm().isPresent()) {
      row.put("pelvis_depth_worn", sizeText(player.wornDepthMm()));
    }
    TableText table = TableText.read(file);
    table.fill(row);
    WholeFile.write(file, table.text());
  }

  private static String sizeText(OptionalDouble sizeMm) {
    return sizeMm.isEmpty()
        ? "n/a"
        : BigDecimal.valueOf(sizeMm.getAsDouble()).stripTrailingZeros().toPlainString();
  }
}
