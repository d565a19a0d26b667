package steadyturn.cli.command.live;

import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.serial.Ports;
import steadyturn.ingest.serial.SerialPortSource;

/** Listens at ports before anything is recorded: which units are there, and which one is moved. */
public final class UnitSearch implements AutoCloseable {

  /**
   * A unit at a port.
   *
   * @param number which of several at the port; 0 for the only one
   * @param adapter that understands it, or empty
   * @param worn where it says it is worn
   * @param trouble what is the matter, or empty
   */
  public record Found(
      String path,
      int number,
      String adapter,
      Optional<BodyPoint> worn,
      double rateHz,
      double turnDegPerS,
      String trouble) {

    /** Its port as people name it. */
    public String place() {
      return number == 0 ? path : path + "#" + number;
    }

    /** What records it at a body point. */
    public UnitChoice at(BodyPoint point) {
      return new UnitChoice(
          Optional.of(point),
          path,
          number,
          Optional.of(adapter).filter(name -> !name.isEmpty()),
          "");
    }
  }

  private final List<PortWatch> watches;
  private final List<SerialPortSource> sources;

  private UnitSearch(List<PortWatch> watches) {
    this.watches = watches;
    sources = watches.stream().map(w -> SerialPortSource.open(w.path(), w.bauds(), w)).toList();
  }

  /** At these ports; at all that the machine knows of where none is named. */
  public static UnitSearch at(List<String> paths) {
    List<String> all =
        paths.isEmpty() ? Ports.all().stream().map(Ports.Port::path).toList() : paths;
    return new UnitSearch(all.stream().distinct().map(path -> new PortWatch(path, "")).toList());
  }

  /** What is seen now. */
  public List<Found> found() {
    return watches.stream().flatMap(watch -> watch.found().stream()).toList();
  }

  @Override
  public void close() {
    sources.forEach(SerialPortSource::close);
  }
}
