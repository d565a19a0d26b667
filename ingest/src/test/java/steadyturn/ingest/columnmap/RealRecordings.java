package steadyturn.ingest.columnmap;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;

/** The open recordings beside the project; tests that need them are left out without them. */
public final class RealRecordings {

  private static final Path FOLDER = Path.of("../../shared/data");

  private RealRecordings() {}

  public static Path file(String name) {
    assumeTrue(
        Files.isDirectory(FOLDER),
        "left out: the open recordings are not at ../shared/data beside the project");
    return FOLDER.resolve(name);
  }
}
