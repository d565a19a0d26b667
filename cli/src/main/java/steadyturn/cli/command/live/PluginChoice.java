package steadyturn.cli.command.live;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Option;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sensor.AdapterPlugins;

/**
 * The folder with what lies beside the program: adapters, a database. Adapters are read before the
 * words of the command line are, since a word may name one of them.
 */
public final class PluginChoice {

  private static final String OPTION = "--plugins";

  /** Commands that read units. */
  private static final Set<String> USERS =
      Set.of("units", "record", "lesson", "calibrate", "import");

  @Option(names = OPTION, paramLabel = "DIR")
  private Optional<Path> folder = Optional.empty();

  /** The folder that was chosen, else the usual one. */
  public Path folder() {
    return folder.orElseGet(PluginChoice::usual);
  }

  /** Loads the adapters for a command that may need them; tells what is passed over. */
  public static void loadFor(String command, List<String> words, PrintWriter err) {
    if (!USERS.contains(command)) {
      return;
    }
    try {
      for (AdapterPlugins.PassedOver one : AdapterPlugins.load(folder(words))) {
        err.println("steadyturn: " + Words.say("plugins.passed-over", one.jar(), one.why()));
      }
    } catch (IOException e) {
      err.println("steadyturn: " + Words.say("plugins.passed-over", folder(words), e.toString()));
    }
  }

  private static Path folder(List<String> words) {
    for (int i = 0; i < words.size(); i++) {
      if (words.get(i).startsWith(OPTION + "=")) {
        return Path.of(words.get(i).substring(OPTION.length() + 1));
      }
      if (words.get(i).equals(OPTION) && i + 1 < words.size()) {
        return Path.of(words.get(i + 1));
      }
    }
    return usual();
  }

  /** By the XDG base directory specification: in the user's folder of settings. */
  private static Path usual() {
    String settings = Optional.ofNullable(System.getenv("XDG_CONFIG_HOME")).orElse("");
    Path base =
        settings.isEmpty()
            ? Path.of(System.getProperty("user.home"), ".config")
            : Path.of(settings);
    return base.resolve("steadyturn").resolve("plugins");
  }
}
