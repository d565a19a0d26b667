package steadyturn.cli.command.live;

import static java.util.Locale.ROOT;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveState;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.serial.PortListener;
import steadyturn.ingest.serial.SerialPortSource;
import steadyturn.ingest.serial.SharedPort;

/** The ports of a recording, with one line about each for the person who watches. */
public final class LivePorts implements AutoCloseable {

  private record Open(String path, LiveUnit unit) {}

  private final List<Open> ports = new ArrayList<>();
  private final List<SerialPortSource> sources = new ArrayList<>();
  private final List<String> told = new ArrayList<>();

  /**
   * Begins to read the ports; each unit's bytes go into the recording.
   *
   * @param feeds hears one unit each
   */
  void open(
      LiveRecorder recorder,
      List<UnitChoice> choices,
      PortOptions options,
      Supplier<LessonFeed> feeds) {
    Map<String, List<PortListener>> byPath = new LinkedHashMap<>();
    Map<String, List<Integer>> bauds = new HashMap<>();
    for (UnitChoice choice : choices) {
      SensorAdapter adapter = choice.newAdapter();
      LessonFeed feed = feeds.get();
      LiveUnit unit =
          feed.of(new LiveUnit(recorder, adapter, choice.point(), options.place(choice), feed));
      byPath.computeIfAbsent(choice.path(), path -> new ArrayList<>()).add(unit);
      bauds.put(choice.path(), options.bauds(adapter));
      ports.add(new Open(choice.place(), unit));
      told.add("");
    }
    byPath.forEach(
        (path, units) ->
            sources.add(
                SerialPortSource.open(
                    path, bauds.getOrDefault(path, List.of()), new SharedPort(units))));
  }

  /** The state of every unit, in the order in which they were named. */
  public List<LiveState> states() {
    return ports.stream().map(port -> port.unit().state()).toList();
  }

  /** Troubles as they come and go. */
  List<String> troubles() {
    List<String> news = new ArrayList<>();
    for (int i = 0; i < ports.size(); i++) {
      LiveState state = ports.get(i).unit().state();
      String trouble = state.trouble();
      if (!trouble.equals(told.get(i))) {
        told.set(i, trouble);
        String there = state.unplugged() > 0 ? "record.there.again" : "record.there";
        news.add(who(ports.get(i)) + (trouble.isEmpty() ? Words.say(there) : trouble));
      }
    }
    return news;
  }

  /** {@code pelvis (PORT)}, or the port alone while it is not known whose it is. */
  private static String who(Open port) {
    String name = name(port);
    return name.equals(port.path()) ? name + " " : name + " (" + port.path() + ") ";
  }

  /** One short line: how long, what was lost in all, each unit's rate. */
  String status(double sinceS) {
    long lost = ports.stream().mapToLong(port -> port.unit().state().lost()).sum();
    String rates = ports.stream().map(LivePorts::rate).collect(Collectors.joining("  "));
    return String.format(ROOT, "%d:%02d  ", (int) sinceS / 60, (int) sinceS % 60)
        + Words.say("record.lost", lost)
        + "  "
        + rates;
  }

  private static String rate(Open port) {
    LiveState state = port.unit().state();
    String name =
        state.point().map(p -> Words.say("record.at." + p.trackedPoint())).orElse(port.path());
    return state.trouble().isEmpty() && state.rateHz() > 0
        ? String.format(ROOT, "%s %.0f", name, state.rateHz())
        : name + " --";
  }

  /** Whether every unit's adapter worked to the end. */
  boolean nobodyGivenUp() {
    return ports.stream().noneMatch(port -> port.unit().isGivenUp());
  }

  private static String name(Open port) {
    return port.unit().state().point().map(PlainWords::bodyPoint).orElse(port.path());
  }

  /** What is on the disk and what was lost on the way, a line or two a unit. */
  List<String> summary() {
    List<String> lines = new ArrayList<>();
    for (Open port : ports) {
      LiveState s = port.unit().state();
      lines.add(Words.say("record.unit", pad(name(port)), s.kept(), s.lost()));
      lines.add(Words.say("record.unit.clock", pad(""), s.skewPpm(), 1000 * s.clockSpreadS()));
      if (s.skippedBytes() + s.restarts() > 0 || s.unplugged() > 0) {
        lines.add(
            Words.say(
                "record.unit.trouble", pad(""), s.unplugged(), s.restarts(), s.skippedBytes()));
      }
    }
    return lines;
  }

  private static String pad(String name) {
    return String.format(ROOT, "%-13s", name);
  }

  @Override
  public void close() {
    sources.forEach(SerialPortSource::close);
    ports.forEach(port -> port.unit().betterStart());
  }
}
