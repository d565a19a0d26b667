package steadyturn.ingest.live;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.UnitStream;

/** Records virtual units at 1 kHz for a long time, then counts what is missing. */
public final class SoakRun {

  private SoakRun() {}

  /** Folder, units, seconds, and stretches in which the first unit is unplugged, such as 10-12. */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createDirectories(Path.of(args[0]));
    int units = Integer.parseInt(args[1]);
    double lengthS = Double.parseDouble(args[2]);
    List<UnitFaults.Stretch> unplugged = new ArrayList<>();
    for (int k = 3; k < args.length; k++) {
      String[] ends = args[k].split("-", -1);
      unplugged.add(
          new UnitFaults.Stretch(Double.parseDouble(ends[0]), Double.parseDouble(ends[1])));
    }
    UnitFaults faults = new UnitFaults(0, 0, 0, 0, 30, unplugged);
    Path root = folder.resolve("lessons");
    try (LivePlay play = new LivePlay(folder, units, 1000, lengthS, faults)) {
      Process recorder = play.record(root, lengthS + 6);
      Thread.sleep(3000);
      play.start();
      String said = new String(recorder.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      play.join();
      System.out.print(said);
    }
    for (UnitStream unit :
        RecordingReader.read(Archive.open(root).sessions().get(0).runs().get(0))
            .recording()
            .units()) {
      System.out.println(missing(unit));
    }
    System.exit(0);
  }

  private static String missing(UnitStream unit) {
    int last = MadeStream.numberOf(unit, unit.size() - 1);
    int first = MadeStream.numberOf(unit, 0);
    return unit.point()
        + ": "
        + unit.size()
        + " samples, numbers "
        + first
        + " to "
        + last
        + ", missing "
        + (last - first + 1 - unit.size());
  }
}
