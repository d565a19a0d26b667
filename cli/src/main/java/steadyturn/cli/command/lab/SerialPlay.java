package steadyturn.cli.command.lab;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.lab.Speech;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.serial.HostTime;

/** Options and work of playing a lesson through virtual serial ports. */
final class SerialPlay {

  @Option(names = "--serial", arity = "1..*", paramLabel = "PATH")
  private List<Path> paths = List.of();

  @Option(names = "--from", paramLabel = "LESSON")
  private Path from = Path.of("");

  @Option(names = "--speed", paramLabel = "N")
  private double speed = 1;

  @Option(names = "--speak", paramLabel = "PROTOCOL")
  private Speech speech = Speech.BINARY_FRAME;

  @Option(names = "--clockless", paramLabel = "POINT", split = ",")
  private List<String> clockless = List.of();

  @Option(names = "--silent", paramLabel = "FROM-TO")
  private Optional<String> silent = Optional.empty();

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
    List<VirtualUnit> units = new ArrayList<>();
    double zeroS = zeroS(recording);
    try {
      for (int k = 0; k < paths.size(); k++) {
        UnitStream stream = sent(recording.units().get(k), zeroS, console);
        VirtualPort port = VirtualPort.at(paths.get(k));
        ports.add(port);
        units.add(
            new VirtualUnit(
                stream, encoder(stream), port, faults(k, console), zeroS, speed, seed + k));
        console.out().printf(ROOT, "%s is %s%n", paths.get(k), stream.point().trackedPoint());
      }
      console.out().flush();
      double startS = HostTime.steadyS();
      List<Thread> threads = units.stream().map(u -> new Thread(() -> u.run(startS))).toList();
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

  /** When the first of the units that are played begins, on the recording's axis, s. */
  private double zeroS(Recording recording) {
    return recording.units().stream()
        .limit(paths.size())
        .filter(u -> u.size() > 0)
        .mapToDouble(u -> u.timeS(0))
        .min()
        .orElse(0);
  }

  /** How much too slow the clock of a unit was made besides, ppm. */
  double skewPpm(int k) {
    return k < skewPpm.size() ? skewPpm.get(k) : 0;
  }

  /** A unit without a clock sends as those do whose samples come by their arrival. */
  private UnitEncoder encoder(UnitStream stream) {
    return (isClockless(stream) ? Speech.FRAMES_55_LONG : speech).encoder();
  }

  private boolean isClockless(UnitStream stream) {
    return clockless.contains(stream.point().trackedPoint());
  }

  /** What units without a clock send, others all of theirs: those alone fall silent. */
  private UnitStream sent(UnitStream stream, double zeroS, Console console) {
    if (silent.isEmpty() || !isClockless(stream)) {
      return stream;
    }
    UnitFaults.Stretch none = stretch(silent.get(), console);
    return stream
        .between(Double.NEGATIVE_INFINITY, zeroS + none.fromS())
        .followedBy(stream.between(zeroS + none.toS(), Double.POSITIVE_INFINITY));
  }

  private UnitFaults faults(int k, Console console) {
    List<UnitFaults.Stretch> stretches = new ArrayList<>();
    if (k == 0) {
      unplugs.forEach(word -> stretches.add(stretch(word, console)));
    }
    return new UnitFaults(dropPct, damagePct, noisePct, jitterMs / 1000, skewPpm(k), stretches);
  }

  private static UnitFaults.Stretch stretch(String word, Console console) {
    String[] ends = word.split("-", -1);
    try {
      return new UnitFaults.Stretch(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw console.wrongUsage(
          "--unplug and --silent take stretches like 10-12, not \"" + word + "\"");
    }
  }
}
