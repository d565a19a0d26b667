package steadyturn.ingest.recording.write;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.JsonText;

/** The files at the top of a dataset. What is there stays as it is. */
public final class DatasetFiles {

  private static final String BIDS_VERSION = "1.9.0";
  private static final String MADE_BY = "steadyturn";

  private DatasetFiles() {}

  /** Makes a folder a dataset, adding only what is missing. */
  public static void ensure(Path root, String name) {
    ensureDescription(root, name);
    if (!anyReadme(root)) {
      WholeFile.write(root.resolve("README"), readme(name));
    }
    Path described = root.resolve("participants.json");
    if (!Files.exists(described)) {
      WholeFile.write(described, JsonText.of(participantColumns()));
    }
  }

  private static void ensureDescription(Path root, String name) {
    Path file = root.resolve("dataset_description.json");
    if (!Files.exists(file)) {
      Map<String, Object> members = new LinkedHashMap<>();
      members.put("Name", name);
      members.put("BIDSVersion", BIDS_VERSION);
      members.put("DatasetType", "raw");
      members.put("GeneratedBy", List.of(Map.of("Name", MADE_BY)));
      WholeFile.write(file, JsonText.of(members));
    }
  }

  /**
   * Makes {@code derivatives/<name>/} with its description and returns it: the place for what is
   * computed from the recordings.
   */
  public static Path derivatives(Path root, String name, String version) {
    Path folder = root.resolve("derivatives").resolve(name);
    Path file = folder.resolve("dataset_description.json");
    if (!Files.exists(file)) {
      Map<String, Object> by = new LinkedHashMap<>();
      by.put("Name", name);
      by.put("Version", version);
      Map<String, Object> members = new LinkedHashMap<>();
      members.put("Name", name);
      members.put("BIDSVersion", BIDS_VERSION);
      members.put("DatasetType", "derivative");
      members.put("GeneratedBy", List.of(by));
      members.put("SourceDatasets", List.of(Map.of("URL", "file:../..")));
      WholeFile.write(file, JsonText.of(members));
    }
    return folder;
  }

  private static boolean anyReadme(Path root) {
    return Files.exists(root.resolve("README"))
        || Files.exists(root.resolve("README.md"))
        || Files.exists(root.resolve("README.txt"));
  }

  private static String readme(String name) {
    return name
        + "\n\nRecordings of inertial units worn by golf players, in the layout of Motion-BIDS. One"
        + " folder a player (sub-) and lesson (ses-); one motion table a unit (tracksys-), each"
        + " with its own clock.\nTables have no header line: the columns are named in the channels"
        + " files.\n\nThese are personal data. Keep them as their players agreed.\n";
  }

  private static Map<String, Object> participantColumns() {
    Map<String, Object> columns = new LinkedHashMap<>();
    Map<String, Object> handedness = new LinkedHashMap<>();
    handedness.put("Description", "The side the player swings from");
    Map<String, Object> sides = new LinkedHashMap<>();
    sides.put("right", "right-handed: the left arm leads");
    sides.put("left", "left-handed: the right arm leads");
    handedness.put("Levels", sides);
    columns.put("handedness", handedness);
    columns.put("pelvis_width", size("Distance between the front hip-bone points (ASIS)"));
    columns.put("pelvis_depth", size("From the middle of the ASIS to the middle of the PSIS"));
    columns.put("stature", size("Standing height"));
    columns.put(
        "pelvis_depth_worn",
        size("From the middle of the ASIS to the outer face of the worn pelvis unit"));
    return columns;
  }

  private static Map<String, Object> size(String description) {
    Map<String, Object> size = new LinkedHashMap<>();
    size.put("Description", description);
    size.put("Units", "mm");
    return size;
  }
}
