package steadyturn.ingest.recording.write;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.recording.disk.Shipped;
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
      WholeFile.write(
          root.resolve("README"), name + "\n" + Shipped.text(DatasetFiles.class, "README.txt"));
    }
    Path described = root.resolve("participants.json");
    if (!Files.exists(described)) {
      WholeFile.write(described, Shipped.text(DatasetFiles.class, "participants.json"));
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
}
