package steadyturn.cli.terminal;

import java.io.IOError;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.AttributedString;
import org.jline.utils.Status;

/** A terminal: a line to type in, the status below it, what is said above it. */
public final class TerminalDesk implements Desk {

  private static final String PROMPT = "> ";
  private static final String STATUS = "status-of-the-lesson";

  private final Console console;
  private final org.jline.terminal.Terminal terminal;
  private final LineReader reader;
  private final Optional<Status> status;
  private volatile String shown = "";

  private TerminalDesk(org.jline.terminal.Terminal terminal, Console console) {
    this.terminal = terminal;
    this.console = console;
    reader =
        LineReaderBuilder.builder()
            .terminal(terminal)
            .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
            .option(LineReader.Option.BRACKETED_PASTE, false)
            .build();
    status = Optional.ofNullable(Status.getStatus(terminal));
    status.ifPresent(line -> reader.getWidgets().put(STATUS, () -> update(line)));
  }

  /** The terminal this was started in; none where there is none, or one that can do nothing. */
  public static Optional<Desk> open(Console console) {
    try {
      return Optional.of(
          new TerminalDesk(TerminalBuilder.builder().system(true).dumb(false).build(), console));
    } catch (IOException | IllegalStateException e) {
      return Optional.empty();
    }
  }

  @Override
  public void say(String line) {
    try {
      reader.printAbove(folded(Terminal.safe(line), width()));
    } catch (IOError e) {
      console.out().println(line); // the terminal went; there may be a file to read it in
    }
  }

  @Override
  public void warn(String line) {
    say("steadyturn: " + line);
    if (!Console.isWatched()) {
      console.warn("%s", line);
      console.err().flush();
    }
  }

  /** Under the reader's lock: what is typed at this moment must not come between. */
  @Override
  public void status(String line) {
    shown = Terminal.safe(line);
    try {
      reader.callWidget(STATUS);
    } catch (IllegalStateException | IOError e) {
      return; // between two lines nothing is read; the next one comes soon, or the terminal went
    }
  }

  private boolean update(Status line) {
    line.update(
        List.of(new AttributedString(shown.substring(0, Math.min(width(), shown.length())))));
    return true;
  }

  private int width() {
    return terminal.getWidth() > 0 ? terminal.getWidth() - 1 : 79;
  }

  /** The line in pieces that fit, broken between words; the later ones a little to the right. */
  static String folded(String line, int width) {
    int at = line.length() <= width ? -1 : line.lastIndexOf(' ', width);
    String indent = " ".repeat(4);
    return at <= indent.length()
        ? line
        : line.substring(0, at).stripTrailing()
            + System.lineSeparator()
            + folded(indent + line.substring(at + 1).strip(), width);
  }

  @Override
  public Optional<String> typed() {
    try {
      return Optional.of(reader.readLine(PROMPT));
    } catch (UserInterruptException | EndOfFileException | IOError e) {
      return Optional.of(QUIT);
    }
  }

  @Override
  public void close() {
    try {
      status.ifPresent(Status::hide);
      terminal.close();
    } catch (IOException | IOError e) {
      console.status(""); // the terminal went before
    }
  }
}
