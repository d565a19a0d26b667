package steadyturn.cli.terminal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Plain lines, for scripts and for those who watch a file. */
public final class PlainDesk implements Desk {

  private final Console console;
  private final boolean isTyped;
  private final BufferedReader in =
      new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));

  /**
   * A desk without a terminal.
   *
   * @param isTyped whether lines are read from standard input
   */
  public PlainDesk(Console console, boolean isTyped) {
    this.console = console;
    this.isTyped = isTyped;
  }

  @Override
  public synchronized void say(String line) {
    console.status("");
    console.out().println(line);
    console.out().flush();
  }

  @Override
  public synchronized void warn(String line) {
    console.status("");
    console.warn("%s", line);
    console.err().flush();
  }

  @Override
  public synchronized void status(String line) {
    console.status(line);
  }

  @Override
  public Optional<String> typed() {
    try {
      return isTyped ? Optional.ofNullable(in.readLine()) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  @Override
  public void close() {
    status("");
  }
}
