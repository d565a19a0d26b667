package steadyturn.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import steadyturn.cli.command.Commands;

/** The program: hands the words of the command line to {@link Commands} and ends with its code. */
public final class Main {

  private Main() {}

  public static void main(String[] args) {
    PrintWriter out = writer(new FileOutputStream(FileDescriptor.out), false);
    PrintWriter err = writer(new FileOutputStream(FileDescriptor.err), true);
    int exitCode = Commands.run(out, err, args);
    out.flush();
    err.flush();
    System.exit(exitCode);
  }

  /** UTF-8 whatever the locale says, so that a script reads the same bytes everywhere. */
  private static PrintWriter writer(OutputStream stream, boolean flushEachLine) {
    return new PrintWriter(
        new OutputStreamWriter(new BufferedOutputStream(stream), StandardCharsets.UTF_8),
        flushEachLine);
  }
}
