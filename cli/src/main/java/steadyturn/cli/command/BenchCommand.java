package steadyturn.cli.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadyturn.cli.bench.Cost;
import steadyturn.cli.bench.RoomShare;
import steadyturn.cli.bench.Yardstick;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;

/** Says how long the analysis of a generated lesson takes, beside a fixed yardstick. */
@Command(name = "bench", sortOptions = false)
final class BenchCommand implements Callable<Integer> {

  /** The class that starts the program, by name: it knows the commands, they do not know it. */
  private static final String PROGRAM = "steadyturn.cli.Main";

  /** Rooms below this share are not listed. */
  private static final double LEAST_SHARE = 0.005;

  private static final double USUAL_RATE_HZ = 500;

  @Mixin private Console console;

  @Option(names = "--swings", paramLabel = "N")
  private int swings = 270;

  @Option(names = "--seed", paramLabel = "N")
  private long seed = 7;

  @Option(names = "--live")
  private boolean isLive;

  @Override
  public Integer call() throws Exception {
    if (swings < 1) {
      throw console.wrongUsage("--swings must be 1 or more, was " + swings);
    }
    Path folder = Files.createTempDirectory("steadyturn-bench");
    try {
      simulate(folder);
      if (isLive) {
        SessionRun run = Archive.open(folder).sessions().get(0).runs().get(0);
        new LiveBench()
            .lines(RecordingReader.read(run).recording())
            .forEach(console.out()::println);
      } else {
        Cost cost = Cost.of(() -> analyze(folder));
        print(cost, Yardstick.seconds());
      }
    } finally {
      remove(folder);
    }
    return Failures.DONE;
  }

  /** In a process of its own, so that nothing is warm when the analysis begins. */
  private void simulate(Path folder) throws IOException, InterruptedException {
    List<String> line =
        List.of(
            ProcessHandle.current().info().command().orElse("java"),
            "-cp",
            System.getProperty("java.class.path"),
            PROGRAM,
            "simulate",
            "--swings=" + swings,
            "--seed=" + seed,
            "--waggles=0",
            "--rate=" + (isLive ? LiveBench.RATE_HZ : USUAL_RATE_HZ),
            "--out=" + folder);
    Process process =
        new ProcessBuilder(line)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    if (process.waitFor() != Failures.DONE) {
      throw new IOException("the lesson could not be made; see the line above");
    }
  }

  private int analyze(Path folder) throws IOException {
    PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
    int code = Commands.run(nowhere, console.err(), "analyze", folder.toString(), "--format=json");
    if (code != Failures.DONE) {
      throw new IOException("the lesson could not be analysed; see the line above");
    }
    return code;
  }

  private void print(Cost cost, double yardstickS) {
    List<String> lines = new ArrayList<>();
    lines.add(line("lesson", "%d swings, seed %d", swings, seed));
    lines.add(line("yardstick", "%.2f s of processor time", yardstickS));
    lines.add(
        line(
            "processor time",
            "%.2f s, %.2f yardsticks",
            cost.processorS(),
            cost.processorS() / yardstickS));
    lines.add(line("  compiling", "%.2f s, and collecting", cost.machineS()));
    lines.add(line("time on the clock", "%.2f s", cost.wallS()));
    lines.add(line("peak heap", "%.0f MB", 1e-6 * cost.peakHeapBytes()));
    lines.addAll(shares(cost));
    lines.forEach(console.out()::println);
  }

  /** What each room took. */
  static List<String> shares(Cost cost) {
    List<String> lines = new ArrayList<>();
    lines.add(line("share of rooms", "%8s %18s", "itself", "with what it calls"));
    for (RoomShare room : cost.rooms()) {
      if (room.within() >= LEAST_SHARE) {
        lines.add(
            line(
                "  " + room.room(),
                "%6.1f %% %16.1f %%",
                100 * room.inside(),
                100 * room.within()));
      }
    }
    return lines;
  }

  static String line(String name, String format, Object... values) {
    return String.format(Locale.ROOT, "%-28s", name) + String.format(Locale.ROOT, format, values);
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
