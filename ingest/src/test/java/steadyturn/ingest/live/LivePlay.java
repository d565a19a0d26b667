package steadyturn.ingest.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.lab.VirtualPort;
import steadyturn.ingest.lab.VirtualUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** Virtual units that send numbered samples, and the process that records them. */
final class LivePlay implements AutoCloseable {

  final List<Path> paths = new ArrayList<>();
  final List<VirtualUnit> units = new ArrayList<>();
  private final List<VirtualPort> ports = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  /** Makes the ports; nothing is sent yet. */
  LivePlay(Path folder, int count, double rateHz, double lengthS, UnitFaults ofFirst)
      throws IOException {
    for (int k = 0; k < count; k++) {
      BodyPoint point = List.of(BodyPoint.values()).get(k);
      Path path = folder.resolve("port-" + point.trackedPoint());
      UnitStream stream = MadeStream.numbered(point, rateHz, (int) (rateHz * lengthS));
      VirtualPort port = VirtualPort.at(path);
      UnitFaults faults = k == 0 ? ofFirst : UnitFaults.NONE;
      VirtualUnit unit =
          new VirtualUnit(stream, new BinaryFrameEncoder(16, 2000), port, faults, 0, 1, k);
      paths.add(path);
      ports.add(port);
      units.add(unit);
      threads.add(new Thread(unit, "virtual unit " + k));
    }
  }

  void start() {
    threads.forEach(Thread::start);
  }

  void join() throws InterruptedException {
    for (Thread thread : threads) {
      thread.join();
    }
  }

  /** Starts a recorder process on all ports. */
  Process record(Path root, double seconds) throws IOException {
    List<String> command = new ArrayList<>();
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx128m",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("java.class.path"),
            RecorderProcess.class.getName(),
            root.toString(),
            Double.toString(seconds)));
    paths.forEach(p -> command.add(p.toString()));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  @Override
  public void close() throws IOException {
    units.forEach(VirtualUnit::stop);
    for (VirtualPort port : ports) {
      port.close();
    }
  }
}
