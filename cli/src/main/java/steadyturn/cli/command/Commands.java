package steadyturn.cli.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import steadyturn.cli.command.calibrate.CalibrateCommand;
import steadyturn.cli.command.lab.AccuracyCommand;
import steadyturn.cli.command.lab.SimulateCommand;
import steadyturn.cli.command.lesson.AnalyzeCommand;
import steadyturn.cli.command.lesson.CheckCommand;
import steadyturn.cli.command.lesson.CompareCommand;
import steadyturn.cli.command.lesson.DemoCommand;
import steadyturn.cli.command.lesson.ImportCommand;
import steadyturn.cli.command.lesson.OrientCommand;
import steadyturn.cli.command.lesson.ProgressCommand;
import steadyturn.cli.command.lesson.ReportCommand;
import steadyturn.cli.command.live.MarkCommand;
import steadyturn.cli.command.live.RecordCommand;
import steadyturn.cli.command.live.UnitsCommand;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Terminal;

/**
 * The table of all commands and the one way to run one. The list is printed without building any
 * command, and only the command that was asked for is built: so the program starts quickly.
 */
public final class Commands {

  private record Entry(String name, String says, Class<?> command) {}

  /** In the order a new user needs them. */
  private static final List<Entry> ALL =
      List.of(
          new Entry("demo", "analyse the bundled lesson", DemoCommand.class),
          new Entry(
              "analyze", "measure turn, slide and release in recordings", AnalyzeCommand.class),
          new Entry(
              "check", "say whether the units of a recording are fit for use", CheckCommand.class),
          new Entry(
              "import", "bring in tables of other programs by a column map", ImportCommand.class),
          new Entry("compare", "tell whether clubs or lessons truly differ", CompareCommand.class),
          new Entry("report", "write the page of a lesson to send home", ReportCommand.class),
          new Entry("progress", "tell what changed over a player's lessons", ProgressCommand.class),
          new Entry("simulate", "write a simulated lesson with its truth", SimulateCommand.class),
          new Entry(
              "units", "show the units at the ports, or begin a new adapter", UnitsCommand.class),
          new Entry("record", "record live units into a dataset", RecordCommand.class),
          new Entry("mark", "leave a mark in a running recording", MarkCommand.class),
          new Entry(
              "accuracy", "count how wrong the results are, by simulation", AccuracyCommand.class),
          new Entry("bench", "say how long an analysis takes", BenchCommand.class),
          new Entry(
              "orient", "find the orientation of units in any recording", OrientCommand.class),
          new Entry("calibrate", "find the errors of a unit and keep them", CalibrateCommand.class),
          new Entry("completion", "print a completion script for bash", CompletionCommand.class));

  private Commands() {}

  /** Runs one command line; the exit code is 0 done, 1 failed, 2 wrong usage. */
  public static int run(PrintWriter out, PrintWriter err, String... args) {
    Terminal results = new Terminal(out, false);
    Terminal remarks = new Terminal(err, true);
    try {
      return run(results, remarks, args);
    } finally {
      results.flush();
      remarks.flush();
    }
  }

  private static int run(Terminal out, Terminal err, String... args) {
    if (args.length == 0) {
      return refuse(err, "a command is missing");
    }
    String name = args[0];
    if (name.equals("--help") || name.equals("-h") || name.equals("help")) {
      out.print(help());
      return Failures.DONE;
    }
    if (name.equals("--version") || name.equals("-V")) {
      out.println("steadyturn " + Commands.class.getPackage().getImplementationVersion());
      return Failures.DONE;
    }
    Optional<Entry> entry = named(name);
    if (entry.isEmpty()) {
      return refuse(err, "there is no command \"" + name + "\"");
    }
    CommandLine line = new CommandLine(entry.get().command());
    line.setCommandName("./steadyturn " + name);
    line.setOut(out).setErr(err);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setUsageHelpWidth(100);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    Failures failures = new Failures();
    line.setParameterExceptionHandler(failures).setExecutionExceptionHandler(failures);
    try {
      return line.execute(List.of(args).subList(1, args.length).toArray(String[]::new));
    } catch (OutOfMemoryError e) {
      err.println("steadyturn: " + Failures.OUT_OF_MEMORY);
      return Failures.FAILED;
    }
  }

  /** A plain loop: a stream would cost some ms of every start. */
  private static Optional<Entry> named(String name) {
    for (Entry entry : ALL) {
      if (entry.name().equals(name)) {
        return Optional.of(entry);
      }
    }
    return Optional.empty();
  }

  private static int refuse(PrintWriter err, String why) {
    err.println("steadyturn: " + why + "; ./steadyturn --help lists the commands");
    return Failures.WRONG_USAGE;
  }

  private static String help() {
    StringBuilder text = new StringBuilder();
    text.append("Does a golfer's pelvis turn around a steady point, or does it slide?\n");
    text.append("Measured by small inertial units worn on pelvis, lead forearm and lead hand.\n\n");
    text.append("Usage: ./steadyturn COMMAND [--help]\n\n");
    for (Entry entry : ALL) {
      text.append("  ").append(entry.name()).append(" ".repeat(13 - entry.name().length()));
      text.append(entry.says()).append('\n');
    }
    text.append("\nFirst time here: ./steadyturn demo, then docs/first-lesson.md.\n");
    text.append("Exit codes: 0 done, 1 failed, 2 wrong usage.\n");
    return text.toString();
  }

  /** The command line with every command built, as the completion script needs it. */
  static CommandLine complete() {
    CommandLine line = new CommandLine(new TopCommand());
    ALL.forEach(entry -> line.addSubcommand(entry.name(), entry.command()));
    return line;
  }
}
