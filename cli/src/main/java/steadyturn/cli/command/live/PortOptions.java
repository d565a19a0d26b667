package steadyturn.cli.command.live;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import steadyturn.ingest.live.PortPlace;
import steadyturn.ingest.sensor.SensorAdapter;

/** Options of commands that listen at ports. */
public final class PortOptions {

  @Option(names = "--baud", paramLabel = "N")
  private Optional<Integer> baud = Optional.empty();

  @Option(names = "--configure")
  private boolean mayConfigure;

  /** The rates to try: the one that was named, else those of the adapter. */
  public List<Integer> bauds(SensorAdapter adapter) {
    return baud.map(List::of).orElseGet(adapter::bauds);
  }

  /** Which unit of its port it is, and whether it may be changed. */
  public PortPlace place(UnitChoice choice) {
    return new PortPlace(choice.number(), mayConfigure);
  }
}
