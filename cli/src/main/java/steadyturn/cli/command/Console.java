package steadyturn.cli.command;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What every command has: help, --verbose, the two writers and a progress bar. */
final class Console {

  private static final boolean IS_WATCHED = Boolean.getBoolean("steadyturn.terminal");

  @SuppressWarnings("UnusedVariable") // picocli looks at it, we do not
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  @Option(names = "--verbose", description = "Show where in the program an error arose.")
  private boolean verbose;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  /** Results. */
  PrintWriter out() {
    return command.commandLine().getOut();
  }

  /** Progress and warnings. */
  PrintWriter err() {
    return command.commandLine().getErr();
  }

  /** One line that a person should read, beside the results. */
  void warn(String sentence) {
    err().println("steadyturn: " + sentence);
  }

  /** A line that the next one is written over; only where a person watches. */
  void status(String line) {
    if (IS_WATCHED && err() instanceof Terminal terminal) {
      terminal.over(line);
    }
  }

  /** Lines that stand in place of the last ones; only where a person watches. */
  void redraw(long lines, String text) {
    if (IS_WATCHED && err() instanceof Terminal terminal) {
      terminal.overLast(lines, text);
    }
  }

  /** Takes the last status line away. */
  void clearStatus() {
    status("");
  }

  /** A failure after which the work goes on. */
  void report(Exception e) {
    Failures.print(e, verbose, err());
  }

  /** A bar for so many steps; silent when standard error is no terminal. */
  Progress progress(int steps) {
    return new Progress(this::status, IS_WATCHED, steps, System.nanoTime());
  }

  /** Wrong usage that only the command itself can see: exit code 2. */
  CommandLine.ParameterException wrongUsage(String why) {
    return new CommandLine.ParameterException(command.commandLine(), why);
  }
}
