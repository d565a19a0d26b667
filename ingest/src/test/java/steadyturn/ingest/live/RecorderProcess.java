package steadyturn.ingest.live;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sensor.FindingAdapter;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.serial.SerialPortSource;

/** A recorder as a process of its own, which can be killed: dataset, seconds, ports. */
public final class RecorderProcess {

  private RecorderProcess() {}

  public static void main(String[] args) throws Exception {
    Path root = Path.of(args[0]);
    long untilMs = System.currentTimeMillis() + Math.round(1000 * Double.parseDouble(args[1]));
    Player player = Player.unmeasured("kit", Handedness.RIGHT);
    List<LiveUnit> units = new ArrayList<>();
    List<SerialPortSource> sources = new ArrayList<>();
    LiveRecorder recorder = LiveRecorder.start(root, player, "01");
    for (int k = 2; k < args.length; k++) {
      LiveUnit unit = new LiveUnit(recorder, new FindingAdapter(), Optional.empty());
      units.add(unit);
      sources.add(SerialPortSource.open(args[k], List.of(SensorAdapter.USUAL_BAUD), unit));
    }
    long nextMs = System.currentTimeMillis();
    while (System.currentTimeMillis() < untilMs && recorder.stopped().isEmpty()) {
      Thread.sleep(100);
      if (System.currentTimeMillis() > nextMs) {
        nextMs += 60_000;
        System.out.println(memory() + " " + cpuS() + " s of processor time");
      }
    }
    sources.forEach(SerialPortSource::close);
    units.forEach(LiveUnit::betterStart);
    recorder.close();
    units.forEach(u -> System.out.println(u.state()));
    System.out.println(recorder.stopped().orElse("ended") + ", " + cpuS() + " s of processor time");
  }

  private static String memory() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) / 1024 + " KiB in use";
  }

  private static double cpuS() {
    return ProcessHandle.current()
        .info()
        .totalCpuDuration()
        .map(d -> d.toMillis() / 1000.0)
        .orElse(0.0);
  }
}
