package steadyturn.cli.command;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Parameters;

/** The lessons that a command works on. */
final class LessonPaths {

  @Parameters(
      arity = "1..*",
      paramLabel = "PATH",
      description = "An archive, a player's or a lesson's folder, or one motion table.")
  private List<Path> paths = List.of();

  List<Path> all() {
    return paths;
  }

  /** The lessons under all of them. */
  Lessons lessons(Console console) {
    return Lessons.under(paths, console);
  }
}
