package steadyturn.cli.command.live;

import static java.util.Locale.ROOT;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import java.util.function.Supplier;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveState;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sensor.FindingAdapter;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;
import steadyturn.ingest.serial.SerialPortSource;

/** The ports of a recording, with one line about each for the person who watches. */
final class LivePorts implements AutoCloseable {

  private record Open(String path, LiveUnit unit, SerialPortSource source) {}

  private final List<Open> ports = new ArrayList<>();
  private final List<String> told = new ArrayList<>();

  /** Begins to read the ports; each unit's bytes go into the recording. */
  void open(LiveRecorder recorder, List<UnitChoice> choices, int baud, Supplier<LessonFeed> feeds) {
    for (UnitChoice choice : choices) {
      SensorAdapter adapter =
          choice.adapter().flatMap(SensorAdapters::named).orElseGet(FindingAdapter::new);
      LessonFeed feed = feeds.get();
      LiveUnit unit = feed.of(new LiveUnit(recorder, adapter, choice.point(), feed));
      SerialPortSource source = SerialPortSource.open(choice.path(), baud, unit);
      ports.add(new Open(choice.path(), unit, source));
      told.add("");
    }
  }

  /** A line that is written over where a person watches, and troubles as they come and go. */
  void show(Console console, LiveRecorder recorder) {
    recorder.news().forEach(console::warn);
    StringJoiner line = new StringJoiner("   ");
    for (int i = 0; i < ports.size(); i++) {
      LiveState state = ports.get(i).unit().state();
      line.add(
          String.format(
              ROOT, "%s %.0f Hz, %d lost", name(ports.get(i)), state.rateHz(), state.lost()));
      if (!state.trouble().equals(told.get(i))) {
        told.set(i, state.trouble());
        String news = state.trouble().isEmpty() ? "is there again" : state.trouble();
        console.warn("%s %s", ports.get(i).path(), news);
      }
    }
    console.status(line + "   marks " + recorder.marks());
  }

  /** Whether every unit's adapter worked to the end. */
  boolean nobodyGivenUp() {
    return ports.stream().noneMatch(port -> port.unit().isGivenUp());
  }

  private static String name(Open port) {
    return port.unit().state().point().map(BodyPoint::trackedPoint).orElse(port.path());
  }

  /** What is on the disk and what was lost on the way, a line a unit. */
  String summary() {
    StringJoiner lines = new StringJoiner(System.lineSeparator());
    for (Open port : ports) {
      LiveState s = port.unit().state();
      lines.add(
          String.format(
              ROOT,
              "%-13s %9d samples  %5d lost  %6d bytes skipped  unplugged %d  restarts %d  clock"
                  + " %+.1f ppm, spread %.2f ms",
              name(port),
              s.kept(),
              s.lost(),
              s.skippedBytes(),
              s.unplugged(),
              s.restarts(),
              s.skewPpm(),
              1000 * s.clockSpreadS()));
    }
    return lines.toString();
  }

  @Override
  public void close() {
    for (Open port : ports) {
      port.source().close();
      port.unit().betterStart();
    }
  }
}
