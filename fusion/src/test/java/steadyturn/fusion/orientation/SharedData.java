package steadyturn.fusion.orientation;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** Real recordings that lie beside the project, where they are. */
final class SharedData {

  private SharedData() {}

  /** A folder of the shared recordings; skips the test, naming the folder, where it is absent. */
  static Path folder(String name) {
    Path folder = path(name);
    Assumptions.assumeTrue(
        Files.isDirectory(folder), "skipped: no shared recordings in ../shared/data/" + name);
    return folder;
  }

  /** The folder ../shared/data beside the project, from the root or from a module. */
  static Path path(String name) {
    Path fromModule = Path.of("../../shared/data");
    Path base = Files.isDirectory(fromModule) ? fromModule : Path.of("../shared/data");
    return base.resolve(name);
  }
}
