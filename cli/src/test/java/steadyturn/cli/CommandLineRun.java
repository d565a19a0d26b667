package steadyturn.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import steadyturn.cli.command.Commands;

/** One run of the command line, with what it printed. */
public record CommandLineRun(int exitCode, String out, String err) {

  /** Runs the program inside this Java machine. */
  public static CommandLineRun of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exitCode = Commands.run(new PrintWriter(out), new PrintWriter(err), args);
    return new CommandLineRun(exitCode, out.toString(), err.toString());
  }

  /** The project's folder, found upwards from where the test runs. */
  public static Path projectFolder() {
    Path folder = Path.of("").toAbsolutePath();
    while (!Files.isDirectory(folder.resolve("sample-recordings"))) {
      folder = folder.getParent();
      if (folder == null) {
        throw new IllegalStateException("no folder above holds sample-recordings");
      }
    }
    return folder;
  }
}
