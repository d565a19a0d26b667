package steadyturn.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns every way to fail into one line on standard error and an exit code. */
public final class Failures implements IParameterExceptionHandler, IExecutionExceptionHandler {

  public static final int DONE = 0;
  public static final int FAILED = 1;
  public static final int WRONG_USAGE = 2;

  public static final String OUT_OF_MEMORY =
      "the Java machine has too little memory for this; STEADYTURN_JAVA_OPTS=-Xmx4g gives it more";

  @Override
  public int handleParseException(ParameterException e, String[] args) {
    CommandLine line = e.getCommandLine();
    String help = "./steadyturn " + line.getCommandSpec().qualifiedName() + " --help";
    String why = oneLine("steadyturn: " + e.getMessage() + "; " + help + " explains");
    line.getErr().println(Wrapping.said(why, Console.isWatched()));
    return WRONG_USAGE;
  }

  @Override
  public int handleExecutionException(Exception e, CommandLine line, ParseResult parsed) {
    line.getOut().flush();
    print(e, parsed.hasMatchedOption("--verbose"), line.getErr());
    return FAILED;
  }

  /** One line; with the place in the program where that was asked for. */
  static void print(Exception e, boolean verbose, PrintWriter err) {
    err.println(Wrapping.said("steadyturn: " + plainWords(e), Console.isWatched()));
    if (verbose) {
      e.printStackTrace(err);
    }
  }

  /** What went wrong, in one line for people. */
  static String plainWords(Exception e) {
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + " does not exist";
    }
    if (e instanceof FileAlreadyExistsException present) {
      return present.getFile() + " exists already";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + ": no permission";
    }
    String message = e.getMessage() == null ? "" : oneLine(e.getMessage());
    boolean meantForPeople = e instanceof IOException || isOurs(e);
    if (meantForPeople && !message.isEmpty()) {
      return message;
    }
    return "unexpected "
        + e.getClass().getSimpleName()
        + (message.isEmpty() ? "" : ": " + message)
        + " (a fault of this program; --verbose shows where)";
  }

  private static boolean isOurs(Exception e) {
    return e.getClass().getName().startsWith("steadyturn.");
  }

  private static String oneLine(String text) {
    return text.strip().replaceAll("\\s*\\R\\s*", " ");
  }
}
