package steadyturn.cli.lesson;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;

/** The lessons that a command works on. */
public final class LessonPaths {

  @Parameters(
      arity = "1..*",
      paramLabel = "PATH",
      description = "An archive, a player's or a lesson's folder, or one motion table.")
  private List<Path> paths = List.of();

  public List<Path> all() {
    return paths;
  }

  /** The lessons under all of them. */
  public Lessons lessons(Console console) {
    return Lessons.under(paths, console);
  }
}
