package steadyturn.cli.command.live;

import static java.util.Locale.ROOT;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;
import steadyturn.ingest.serial.Ports;
import steadyturn.ingest.serial.SerialPortSource;

/** Shows the units at the ports, so that a person can tell which is which by moving it. */
@Command(name = "units", subcommands = UnitsNewCommand.class, sortOptions = false)
public final class UnitsCommand implements Callable<Integer> {

  /** Columns: a bar that grows beyond is cut, or drawing the table anew would miss its lines. */
  static final int WIDTH = 80;

  @Mixin private Console console;

  @SuppressWarnings("UnusedVariable") // for the help and the completion
  @Mixin
  private PluginChoice plugins;

  @Parameters(arity = "0..*", paramLabel = "PORT")
  private List<String> paths = List.of();

  @Option(names = "--baud", paramLabel = "N")
  private Optional<Integer> baud = Optional.empty();

  @Option(names = "--seconds", paramLabel = "S")
  private double lengthS = Boolean.getBoolean("steadyturn.terminal") ? 20 : 3;

  @Override
  public Integer call() throws InterruptedException {
    console.out().println("adapters:");
    SensorAdapters.all().forEach(a -> console.out().println("  " + words(a)));
    Map<String, String> ports = ports();
    if (ports.isEmpty()) {
      console.out().println(Words.say("units.no-port"));
      return Failures.DONE;
    }
    List<PortWatch> watches = new ArrayList<>();
    ports.forEach((path, says) -> watches.add(new PortWatch(path, says)));
    List<SerialPortSource> sources = new ArrayList<>();
    watches.forEach(
        w ->
            sources.add(
                SerialPortSource.open(w.path(), baud.map(List::of).orElseGet(w::bauds), w)));
    look(watches);
    sources.forEach(SerialPortSource::close);
    console.out().print(table(watches));
    return Failures.DONE;
  }

  /** Its name, and what was measured of how often damage passes its check. */
  private static String words(SensorAdapter adapter) {
    String measured =
        Shipped.text(SensorAdapters.class, "damage.tsv")
            .lines()
            .filter(line -> line.startsWith(adapter.name() + "\t"))
            .map(line -> line.substring(line.indexOf('\t') + 1))
            .collect(Collectors.joining("; "));
    String promised = Words.say("units.check", adapter.check().bits());
    return String.format(
        ROOT, "%-13s %s", adapter.name(), measured.isEmpty() ? promised : measured);
  }

  private Map<String, String> ports() {
    Map<String, String> ports = new LinkedHashMap<>();
    if (paths.isEmpty()) {
      Ports.all().forEach(p -> ports.put(p.path(), p.says()));
    }
    paths.forEach(p -> ports.put(p, ""));
    return ports;
  }

  private void look(List<PortWatch> watches) throws InterruptedException {
    for (int step = 0; step < lengthS * 4; step++) {
      Thread.sleep(250);
      String table = table(watches);
      console.redraw(step == 0 ? 0 : table.lines().count(), table);
    }
  }

  private static String table(List<PortWatch> watches) {
    StringBuilder text = new StringBuilder();
    text.append("port           adapter       unit         serial       Hz  m/s^2  turning");
    text.append(System.lineSeparator());
    watches.forEach(w -> text.append(w.lines()));
    return text.toString();
  }

  /** A bar that grows with the rate: a tenth of a full one every 20 deg/s. */
  static String bar(double rateRadPerS) {
    int tenths = (int) Math.min(10, Math.round(Math.toDegrees(rateRadPerS) / 20));
    return String.format(ROOT, "%.0f deg/s ", Math.toDegrees(rateRadPerS)) + "#".repeat(tenths);
  }
}
