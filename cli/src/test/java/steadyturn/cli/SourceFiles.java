package steadyturn.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The sources of the four modules, tests left out. */
final class SourceFiles {

  static final Path HOME = Path.of("..").toAbsolutePath().normalize();
  static final List<String> MODULES = List.of("ingest", "fusion", "analysis", "cli");

  private SourceFiles() {}

  static List<Path> main() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String module : MODULES) {
      try (Stream<Path> under = Files.walk(HOME.resolve(module).resolve("src/main/java"))) {
        under.filter(file -> file.toString().endsWith(".java")).sorted().forEach(files::add);
      }
    }
    return files;
  }
}
