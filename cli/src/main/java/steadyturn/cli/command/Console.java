package steadyturn.cli.command;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What every command has: help, --verbose, the two writers and a progress bar. */
@SuppressWarnings("UnusedVariable") // picocli looks at --help and --verbose, we do not
final class Console {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  @Option(names = "--verbose", description = "Show where in the program an error arose.")
  private boolean verbose;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  CommandLine commandLine() {
    return command.commandLine();
  }

  /** Results. */
  PrintWriter out() {
    return commandLine().getOut();
  }

  /** Progress and warnings. */
  PrintWriter err() {
    return commandLine().getErr();
  }
}
