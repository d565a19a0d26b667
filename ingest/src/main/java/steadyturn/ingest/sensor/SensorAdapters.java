package steadyturn.ingest.sensor;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.stream.Stream;
import steadyturn.ingest.sample.Offered;

/** The adapters on the class path and of plug-ins, each time as fresh instances. */
@Offered
public final class SensorAdapters {

  private SensorAdapters() {}

  /** One new instance of every adapter, by name. */
  public static List<SensorAdapter> all() {
    Stream<SensorAdapter> own =
        ServiceLoader.load(SensorAdapter.class).stream().map(ServiceLoader.Provider::get);
    return Stream.concat(own, AdapterPlugins.adapters())
        .sorted(Comparator.comparing(SensorAdapter::name))
        .toList();
  }

  /** A new instance of the adapter of that name. */
  public static Optional<SensorAdapter> named(String name) {
    return all().stream().filter(a -> a.name().equals(name)).findFirst();
  }

  /**
   * The adapter that understands these bytes best: it finds at least three samples, and passes over
   * less than half of the bytes. A new instance, which has seen none of them.
   */
  public static Optional<SensorAdapter> probe(byte[] bytes) {
    Optional<String> best = Optional.empty();
    long mostSamples = 2;
    for (SensorAdapter adapter : all()) {
      SampleCount count = new SampleCount();
      if (!understands(adapter, bytes, count)) {
        continue;
      }
      if (count.samples() > mostSamples && count.skippedBytes() < bytes.length / 2) {
        mostSamples = count.samples();
        best = Optional.of(adapter.name());
      }
    }
    return best.flatMap(SensorAdapters::named);
  }

  /** An adapter that fails on the bytes of another kind of unit is not the one. */
  private static boolean understands(SensorAdapter adapter, byte[] bytes, SampleCount count) {
    try {
      new AdapterFeed(adapter, count).feed(bytes, bytes.length);
      return true;
    } catch (RuntimeException | StackOverflowError e) {
      return false;
    }
  }
}
