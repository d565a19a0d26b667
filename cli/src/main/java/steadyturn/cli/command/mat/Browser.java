package steadyturn.cli.command.mat;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Opens an address in the browser of whoever sits here. */
final class Browser {

  private Browser() {}

  /** Whether something was started; it says nothing of what that does. */
  static boolean open(String address) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    List<String> line =
        system.startsWith("windows")
            ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
            : List.of(system.startsWith("mac") ? "open" : "xdg-open", address);
    try {
      new ProcessBuilder(line)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start();
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
