package steadyturn.cli.command.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.FindingAdapter;
import steadyturn.ingest.serial.PortListener;

/** Listens at one port and keeps what a person wants to see of the units there. */
final class PortWatch implements PortListener {

  private final String path;
  private final String says;
  private final FindingAdapter adapter = new FindingAdapter();
  private final UnitWatch single = new UnitWatch(this::numbered);
  private final Map<Integer, UnitWatch> numbered = new TreeMap<>();
  private final AdapterFeed feed = new AdapterFeed(adapter, single);
  private String trouble = Words.say("port.silent");
  private long heardAtOpening;

  PortWatch(String path, String says) {
    this.path = path;
    this.says = says;
  }

  String path() {
    return path;
  }

  /** Those at which some adapter's unit may speak. */
  List<Integer> bauds() {
    return adapter.bauds();
  }

  private UnitWatch numbered(int number) {
    return numbered.computeIfAbsent(number, n -> new UnitWatch(this::numbered));
  }

  private long heard() {
    return single.samples() + numbered.values().stream().mapToLong(UnitWatch::samples).sum();
  }

  @Override
  public synchronized void opened() {
    feed.forgetRest();
    adapter.opened();
    heardAtOpening = heard();
  }

  @Override
  public synchronized boolean isUnderstood(double steadyS) {
    return heard() > heardAtOpening;
  }

  @Override
  public synchronized void bytes(byte[] block, int count, double steadyS, double wallS) {
    single.at(steadyS);
    numbered.values().forEach(unit -> unit.at(steadyS));
    feed.feed(block, count, steadyS);
    trouble = heard() == 0 ? Words.say("port.unread") : "";
  }

  @Override
  public synchronized void gone(String why) {
    trouble = why;
  }

  /** The units that speak here; one that does not yet, where none does. */
  synchronized List<UnitSearch.Found> found() {
    String name = adapter.found().orElse("");
    List<UnitSearch.Found> found = new ArrayList<>();
    if (single.samples() > 0 || numbered.isEmpty()) {
      found.add(single.found(path, 0, name, trouble));
    }
    numbered.forEach((number, unit) -> found.add(unit.found(path, number, name, trouble)));
    return found;
  }

  /** One line a unit, or what is the matter. */
  synchronized String lines() {
    if (heard() == 0) {
      return (path + " " + says + " " + trouble).replaceAll(" +", " ") + System.lineSeparator();
    }
    String name = adapter.found().orElse("?");
    String first = single.samples() > 0 ? single.line(path, name, says, trouble) : "";
    return first
        + numbered.entrySet().stream()
            .map(unit -> unit.getValue().line(path + "#" + unit.getKey(), name, says, trouble))
            .collect(Collectors.joining());
  }
}
