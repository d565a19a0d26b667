package steadyturn.cli.command.live;

import static java.util.Locale.ROOT;

import java.util.Optional;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.FindingAdapter;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.PortListener;

/** Listens at one port and keeps what a person wants to see of it. */
final class PortWatch implements PortListener, SampleSink {

  private final String path;
  private final String says;
  private final FindingAdapter adapter = new FindingAdapter();
  private final AdapterFeed feed = new AdapterFeed(adapter, this);
  private Optional<UnitHello> hello = Optional.empty();
  private String trouble = "nothing heard yet";
  private long samples;
  private double firstS;
  private double lastS;
  private double accelNorm;
  private double gyroNorm;

  PortWatch(String path, String says) {
    this.path = path;
    this.says = says;
  }

  String path() {
    return path;
  }

  @Override
  public synchronized void bytes(byte[] block, int count, double steadyS, double wallS) {
    trouble = samples == 0 ? "bytes come, but no adapter understands them (yet)" : "";
    firstS = samples == 0 ? steadyS : firstS;
    lastS = steadyS;
    feed.feed(block, count, steadyS);
  }

  @Override
  public synchronized void gone(String why) {
    trouble = why;
  }

  @Override
  public void hello(UnitHello said) {
    hello = Optional.of(said);
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    samples++;
    accelNorm = Math.sqrt(ax * ax + ay * ay + az * az);
    gyroNorm = Math.sqrt(gx * gx + gy * gy + gz * gz);
    trouble = "";
  }

  @Override
  public void skipped(int bytes) {}

  synchronized String line() {
    if (!trouble.isEmpty() && samples == 0) {
      return String.format(ROOT, "%-22s %s %s%n", path, says, trouble).replaceAll(" +", " ");
    }
    double rateHz = lastS > firstS ? samples / (lastS - firstS) : 0;
    return String.format(
        ROOT,
        "%-22s %-13s %-13s %-10s %7.1f %8.2f  %s%n",
        path,
        adapter.found().orElse("?"),
        hello.map(UnitHello::name).filter(n -> !n.isEmpty()).orElse(says),
        hello.map(UnitHello::serialNumber).orElse(""),
        rateHz,
        accelNorm,
        trouble.isEmpty() ? UnitsCommand.bar(gyroNorm) : trouble);
  }
}
