package steadyturn.cli.terminal;

import java.util.Optional;

/** Where a person types while lines are said: neither ever stands in the other's line. */
public interface Desk extends AutoCloseable {

  /** What a person means who presses Ctrl-C or closes the terminal. */
  String QUIT = "quit";

  /** Says a line, above the one that is typed. */
  void say(String line);

  /** Says that something is the matter; where standard error is apart, there as well. */
  void warn(String line);

  /** Shows a line in place of the one shown before; nothing where nobody watches. */
  void status(String line);

  /** The next typed line, which is waited for; empty when no more can come. */
  Optional<String> typed();

  @Override
  void close();
}
