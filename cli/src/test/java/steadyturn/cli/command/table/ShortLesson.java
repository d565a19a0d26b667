package steadyturn.cli.command.table;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import steadyturn.cli.CommandLineRun;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * The first 76 s of the bundled lesson, wear steps and three swings (two balls, a practice swing):
 * what a test needs of it takes a quarter of the time.
 */
final class ShortLesson {

  /** At 200 Hz. */
  private static final int LINES = 15_200;

  private ShortLesson() {}

  /** Writes it into a folder. */
  static Path into(Path folder) throws IOException {
    Path whole = CommandLineRun.projectFolder().resolve("sample-recordings");
    try (Stream<Path> files = Files.walk(whole)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path to = folder.resolve(whole.relativize(file).toString());
        WholeFile.folder(to);
        if (file.toString().endsWith("_motion.tsv")) {
          try (Stream<String> lines = Files.lines(file)) {
            Files.write(to, lines.limit(LINES).toList());
          }
        } else {
          Files.copy(file, to);
        }
      }
    }
    return folder;
  }
}
