package steadyturn.cli.terminal;

import java.io.PrintWriter;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What every command has: help, --verbose, the two writers and a progress bar. */
public final class Console {

  private static final boolean IS_WATCHED = Boolean.getBoolean("steadyturn.terminal");

  @SuppressWarnings("UnusedVariable") // picocli looks at it, we do not
  @Option(
      names = {"-h", "--help"},
      usageHelp = true)
  private boolean help;

  @Option(names = "--verbose")
  private boolean verbose;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  /** Whether standard error is a terminal. */
  static boolean isWatched() {
    return IS_WATCHED;
  }

  /** Results. */
  public PrintWriter out() {
    return command.commandLine().getOut();
  }

  /** Progress and warnings. */
  public PrintWriter err() {
    return command.commandLine().getErr();
  }

  /** One line that a person should read, beside the results. */
  public void warn(String sentence, Object... parts) {
    err().println(Wrapping.said("steadyturn: " + filled(sentence, parts), IS_WATCHED));
  }

  /** The parts in place of each %s, whatever the locale; a sentence without parts is as it is. */
  private static String filled(String sentence, Object... parts) {
    return parts.length == 0 ? sentence : String.format(Locale.ROOT, sentence, parts);
  }

  /** A line that the next one is written over; only where a person watches. */
  public void status(String line) {
    if (IS_WATCHED && err() instanceof Terminal terminal) {
      terminal.over(line);
    }
  }

  /** Lines that stand in place of the last ones; only where a person watches. */
  public void redraw(long lines, String text) {
    if (IS_WATCHED && err() instanceof Terminal terminal) {
      terminal.overLast(lines, text);
    }
  }

  /** A failure after which the work goes on. */
  public void report(Exception e) {
    Failures.print(e, verbose, err());
  }

  /** A bar for so many steps; silent when standard error is no terminal. */
  public Progress progress(int steps) {
    return new Progress(this::status, IS_WATCHED, steps, System.nanoTime());
  }

  /** Wrong usage that only the command itself can see: exit code 2. */
  public CommandLine.ParameterException wrongUsage(String why, Object... parts) {
    return new CommandLine.ParameterException(command.commandLine(), filled(why, parts));
  }
}
