package steadyturn.cli.command.lab;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Options and work of playing a lesson through virtual serial ports. */
final class SerialPlay {

  @Option(names = "--serial", arity = "1..*", paramLabel = "PATH")
  private List<Path> paths = List.of();

  @Option(names = "--from", paramLabel = "LESSON")
  private Path from = Path.of("");

  @Option(names = "--speed", paramLabel = "N")
  private double speed = 1;

  @Option(names = "--text")
  private boolean isText;

  @Option(names = "--drop", paramLabel = "PCT")
  private double dropPct;

  @Option(names = "--damage", paramLabel = "PCT")
  private double damagePct;

  @Option(names = "--noise", paramLabel = "PCT")
  private double noisePct;

  @Option(names = "--jitter", paramLabel = "MS")
  private double jitterMs;

  @Option(names = "--skew", paramLabel = "PPM", split = ",")
  private List<Double> skewPpm = List.of();

  @Option(names = "--unplug", paramLabel = "FROM-TO", split = ",")
  private List<String> unplugs = List.of();

  boolean isAsked() {
    return !paths.isEmpty();
  }

  /** A recorded lesson to play, or an empty path. */
  Path from() {
    return from;
  }

  /** Plays until the end of the lesson; the ports are gone afterwards. */
  int play(Recording recording, long seed, Console console) throws IOException {
    if (paths.size() > recording.units().size()) {
      throw console.wrongUsage(
          "%s ports for a lesson of %s units", paths.size(), recording.units().size());
    }
    List<VirtualPort> ports = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    try {
      for (int k = 0; k < paths.size(); k++) {
        UnitStream stream = recording.units().get(k);
        VirtualPort port = VirtualPort.at(paths.get(k));
        ports.add(port);
        VirtualUnit unit =
            new VirtualUnit(stream, encoder(), port, faults(k, console), speed, seed + k);
        threads.add(new Thread(unit, "virtual unit " + k));
        console.out().printf(ROOT, "%s is %s%n", paths.get(k), stream.point().trackedPoint());
      }
      console.out().flush();
      threads.forEach(Thread::start);
      for (Thread thread : threads) {
        thread.join();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      for (VirtualPort port : ports) {
        port.close();
      }
    }
    return Failures.DONE;
  }

  private UnitEncoder encoder() {
    return isText ? new TextLineEncoder() : new BinaryFrameEncoder(16, 2000);
  }

  private UnitFaults faults(int k, Console console) {
    List<UnitFaults.Stretch> stretches = new ArrayList<>();
    if (k == 0) {
      unplugs.forEach(word -> stretches.add(stretch(word, console)));
    }
    double skew = k < skewPpm.size() ? skewPpm.get(k) : 0;
    return new UnitFaults(dropPct, damagePct, noisePct, jitterMs / 1000, skew, stretches);
  }

  private static UnitFaults.Stretch stretch(String word, Console console) {
    String[] ends = word.split("-", -1);
    try {
      return new UnitFaults.Stretch(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw console.wrongUsage("--unplug takes stretches like 10-12, not \"" + word + "\"");
    }
  }
}
