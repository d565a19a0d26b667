package steadyturn.cli.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.ResourceBundle;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import steadyturn.cli.command.archive.ForgetCommand;
import steadyturn.cli.command.archive.LessonsCommand;
import steadyturn.cli.command.archive.PlayersCommand;
import steadyturn.cli.command.calibrate.CalibrateCommand;
import steadyturn.cli.command.lab.AccuracyCommand;
import steadyturn.cli.command.lab.SimulateCommand;
import steadyturn.cli.command.lesson.AnalyzeCommand;
import steadyturn.cli.command.lesson.CheckCommand;
import steadyturn.cli.command.lesson.CompareCommand;
import steadyturn.cli.command.lesson.DemoCommand;
import steadyturn.cli.command.lesson.ImportCommand;
import steadyturn.cli.command.lesson.OrientCommand;
import steadyturn.cli.command.lesson.PlanCommand;
import steadyturn.cli.command.lesson.ProgressCommand;
import steadyturn.cli.command.lesson.ReportCommand;
import steadyturn.cli.command.live.MarkCommand;
import steadyturn.cli.command.live.PluginChoice;
import steadyturn.cli.command.live.RecordCommand;
import steadyturn.cli.command.live.UnitsCommand;
import steadyturn.cli.command.mat.LessonCommand;
import steadyturn.cli.command.table.ExportCommand;
import steadyturn.cli.command.table.QueryCommand;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.terminal.Terminal;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.ProgramVersion;

/**
 * The table of all commands and the one way to run one. The list is printed without building any
 * command, and only the command that was asked for is built: so the program starts quickly.
 */
public final class Commands {

  private record Entry(String name, Class<?> command) {}

  /** In the order a new user needs them. */
  private static final List<Entry> ALL =
      List.of(
          new Entry("demo", DemoCommand.class),
          new Entry("lesson", LessonCommand.class),
          new Entry("analyze", AnalyzeCommand.class),
          new Entry("check", CheckCommand.class),
          new Entry("import", ImportCommand.class),
          new Entry("plan", PlanCommand.class),
          new Entry("compare", CompareCommand.class),
          new Entry("report", ReportCommand.class),
          new Entry("progress", ProgressCommand.class),
          new Entry("players", PlayersCommand.class),
          new Entry("lessons", LessonsCommand.class),
          new Entry("forget", ForgetCommand.class),
          new Entry("simulate", SimulateCommand.class),
          new Entry("units", UnitsCommand.class),
          new Entry("record", RecordCommand.class),
          new Entry("mark", MarkCommand.class),
          new Entry("accuracy", AccuracyCommand.class),
          new Entry("bench", BenchCommand.class),
          new Entry("export", ExportCommand.class),
          new Entry("query", QueryCommand.class),
          new Entry("orient", OrientCommand.class),
          new Entry("calibrate", CalibrateCommand.class),
          new Entry("completion", CompletionCommand.class));

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
      out.println("steadyturn " + ProgramVersion.current());
      return Failures.DONE;
    }
    Optional<CommandLine> command = command(name);
    if (command.isEmpty()) {
      return refuse(err, "there is no command \"" + name + "\"");
    }
    CommandLine line = command.get();
    line.setOut(out).setErr(err);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setUsageHelpWidth(80);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    Failures failures = new Failures();
    line.setParameterExceptionHandler(failures).setExecutionExceptionHandler(failures);
    List<String> words = List.of(args).subList(1, args.length);
    try {
      PluginChoice.loadFor(name, words, err);
      return line.execute(words.toArray(String[]::new));
    } catch (OutOfMemoryError e) {
      err.println("steadyturn: " + Failures.OUT_OF_MEMORY);
      return Failures.FAILED;
    }
  }

  /** One command with the texts of its help. A stream here would cost some ms of every start. */
  static Optional<CommandLine> command(String name) {
    for (Entry entry : ALL) {
      if (entry.name().equals(name)) {
        return Optional.of(new CommandLine(entry.command()).setResourceBundle(Words.help()));
      }
    }
    return Optional.empty();
  }

  private static int refuse(PrintWriter err, String why) {
    err.println("steadyturn: " + why + "; ./steadyturn --help lists the commands");
    return Failures.WRONG_USAGE;
  }

  private static String help() {
    ResourceBundle words = Words.help();
    StringBuilder text = new StringBuilder(words.getString("program.before"));
    for (Entry entry : ALL) {
      text.append("  ").append(entry.name()).append(" ".repeat(13 - entry.name().length()));
      text.append(words.getString("says." + entry.name())).append('\n');
    }
    return text.append(words.getString("program.behind")).toString();
  }

  /** The command line with every command built, as the completion script needs it. */
  static CommandLine complete() {
    CommandLine line = new CommandLine(new TopCommand());
    ALL.forEach(entry -> line.addSubcommand(entry.name(), entry.command()));
    return line;
  }
}
