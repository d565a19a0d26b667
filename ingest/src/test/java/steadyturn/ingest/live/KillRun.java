package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * Kills a recorder with signal 9 at seeded moments while units send, and looks at what is left:
 * every dataset must open, hold no sample that was not sent, and lack at most a second of what was.
 */
public final class KillRun {

  private static final double RATE_HZ = 1000;

  /** What one kill left: the most that any unit lacks, s, and what was read. */
  public record Left(double atS, double lackingS, int samples, int invented) {}

  private KillRun() {}

  /** Kills so many recorders, each after 1 to 1 + within seconds. */
  public static List<Left> kill(Path folder, int kills, int units, double withinS, long seed)
      throws Exception {
    Random random = new Random(seed);
    List<Left> all = new ArrayList<>();
    for (int k = 0; k < kills; k++) {
      Path ports = Files.createDirectories(folder.resolve("ports" + k));
      all.add(one(ports, folder.resolve("kill" + k), units, 1 + withinS * random.nextDouble()));
    }
    return all;
  }

  private static Left one(Path ports, Path root, int units, double atS) throws Exception {
    try (LivePlay play = new LivePlay(ports, units, RATE_HZ, atS + 20, UnitFaults.NONE)) {
      Process recorder = play.record(root, 1000);
      waitForDescription(root);
      play.start();
      waitForSamples(root);
      Thread.sleep(Math.round(1000 * atS));
      recorder.destroyForcibly();
      List<Long> sent = play.units.stream().map(u -> u.due()).toList();
      recorder.waitFor(10, TimeUnit.SECONDS);
      return look(root, sent, atS);
    }
  }

  private static void waitForDescription(Path root) throws InterruptedException {
    for (int k = 0; k < 500 && !Files.exists(root.resolve("participants.tsv")); k++) {
      Thread.sleep(20);
    }
    Thread.sleep(300);
  }

  /** A busy machine may need seconds until the recorder knows the unit; the moment counts then. */
  private static void waitForSamples(Path root) throws IOException, InterruptedException {
    for (int k = 0; k < 500; k++) {
      try (Stream<Path> files = Files.walk(root)) {
        if (files.anyMatch(f -> f.toString().endsWith("_motion.tsv") && f.toFile().length() > 0)) {
          return;
        }
      }
      Thread.sleep(20);
    }
  }

  private static Left look(Path root, List<Long> sent, double atS) {
    SessionRun run = Archive.open(root).sessions().get(0).runs().get(0);
    List<UnitStream> read = RecordingReader.read(run).recording().units();
    double lackingS = read.size() < sent.size() ? Double.POSITIVE_INFINITY : 0;
    int samples = 0;
    int invented = 0;
    for (UnitStream unit : read) {
      long due = sent.get(List.of(BodyPoint.values()).indexOf(unit.point()));
      int last = MadeStream.numberOf(unit, unit.size() - 1);
      lackingS = Math.max(lackingS, (due - 1 - last) / RATE_HZ);
      samples += unit.size();
      invented += outOfOrder(unit) + (last >= due + RATE_HZ ? 1 : 0);
    }
    return new Left(atS, lackingS, samples, invented);
  }

  /** Samples whose number does not follow from the one before and from the time between. */
  private static int outOfOrder(UnitStream unit) {
    int wrong = 0;
    for (int i = 1; i < unit.size(); i++) {
      int step = MadeStream.numberOf(unit, i) - MadeStream.numberOf(unit, i - 1);
      double stepS = unit.timeS(i) - unit.timeS(i - 1);
      wrong += Math.abs(stepS - step / RATE_HZ) > 1e-5 ? 1 : 0;
    }
    return wrong;
  }

  /** The long form: folder, kills, units, seconds within which, seed. */
  public static void main(String[] args) throws Exception {
    List<Left> all =
        kill(
            Path.of(args[0]),
            Integer.parseInt(args[1]),
            Integer.parseInt(args[2]),
            Double.parseDouble(args[3]),
            Long.parseLong(args[4]));
    all.forEach(System.out::println);
    System.out.printf(
        "%d kills: most lacking %.3f s, median %.3f s, invented %d%n",
        all.size(),
        all.stream().mapToDouble(Left::lackingS).max().orElse(Double.NaN),
        all.stream()
            .mapToDouble(Left::lackingS)
            .sorted()
            .skip(all.size() / 2)
            .findFirst()
            .orElse(0),
        all.stream().mapToInt(Left::invented).sum());
    System.exit(0);
  }
}
