package steadyturn.cli.terminal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Tells when the terminal a command was started in is gone. The library for serial ports has the
 * process ignore the system's own signal for it (SIGHUP, jSerialComm 2.11.2, its issue 612), so the
 * terminal is looked for; without one at the start there is none to lose.
 */
public final class HangUp {

  private static final Path TERMINAL = Path.of("/dev/tty");

  private final boolean hadTerminal = isThere();

  public boolean isGone() {
    return hadTerminal && !isThere();
  }

  private static boolean isThere() {
    try (InputStream terminal = Files.newInputStream(TERMINAL)) {
      return terminal != null;
    } catch (IOException e) {
      return false;
    }
  }
}
