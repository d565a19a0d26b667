package steadyturn.cli.lesson;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;

/** The lessons that a command works on. */
public final class LessonPaths {

  @Parameters(arity = "1..*", paramLabel = "PATH")
  private List<Path> paths = List.of();

  public List<Path> all() {
    return paths;
  }

  /** The lessons under all of them. */
  public Lessons lessons(Console console) {
    return Lessons.under(paths, console);
  }
}
