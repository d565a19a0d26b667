package steadyturn.cli;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Runs whose figures pages show, each done once however many pages show it. */
final class ShownRuns {

  private static final Map<String, String> DONE = new ConcurrentHashMap<>();

  private ShownRuns() {}

  /** What a command line on the bundled recordings prints. */
  static String out(String command) {
    return DONE.computeIfAbsent(command, ShownRuns::run);
  }

  private static String run(String command) {
    String home = CommandLineRun.projectFolder().toString();
    System.setProperty("steadyturn.home", home);
    String[] words =
        command.replace("sample-recordings", home + "/sample-recordings").split(" ", -1);
    CommandLineRun run = CommandLineRun.of(words);
    if (run.exitCode() != 0) {
      throw new AssertionError(command + ": " + run.err());
    }
    return run.out();
  }
}
