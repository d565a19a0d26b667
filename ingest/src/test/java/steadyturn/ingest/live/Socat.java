package steadyturn.ingest.live;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The program that makes pseudo-terminals; tests are left out without it, unless all must run. */
final class Socat {

  private Socat() {}

  static void require() {
    boolean isThere =
        List.of("/usr/bin/socat", "/bin/socat", "/usr/local/bin/socat").stream()
            .anyMatch(p -> Files.exists(Path.of(p)));
    boolean mustBeThere = "1".equals(System.getenv("STEADYTURN_CHECK"));
    assumeTrue(isThere || mustBeThere, "the program socat is not installed");
  }
}
