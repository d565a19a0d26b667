package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Waits for enough bytes to tell which adapter understands them, then is that adapter. Not among
 * the registered ones.
 */
public final class FindingAdapter implements SensorAdapter {

  private static final int ENOUGH_BYTES = 600;
  private static final int MOST_BYTES = 1 << 14;

  private Optional<SensorAdapter> found = Optional.empty();
  private Optional<UnitLink> link = Optional.empty();
  private UnitOptions wishes = UnitOptions.none();
  private double arrivedS = Double.NaN;
  private int nextTryBytes = ENOUGH_BYTES;

  @Override
  public String name() {
    return found.map(SensorAdapter::name).orElse("finding");
  }

  /** The name of the adapter, once it is found. */
  public Optional<String> found() {
    return found.map(SensorAdapter::name);
  }

  @Override
  public void arrived(double hostS) {
    arrivedS = hostS;
    found.ifPresent(adapter -> adapter.arrived(hostS));
  }

  private void prepare(SensorAdapter adapter) {
    adapter.choose(wishes);
    adapter.opened();
    link.ifPresent(adapter::configure);
    adapter.arrived(arrivedS);
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    if (found.isEmpty() && bytes.remaining() >= nextTryBytes) {
      byte[] all = new byte[bytes.remaining()];
      bytes.get(bytes.position(), all);
      found = SensorAdapters.probe(all);
      found.ifPresent(this::prepare);
      nextTryBytes = Math.min(MOST_BYTES / 2, 2 * nextTryBytes);
    }
    if (found.isPresent()) {
      found.get().read(bytes, sink);
    } else if (bytes.remaining() > MOST_BYTES) {
      sink.skipped(bytes.remaining() / 2);
      bytes.position(bytes.position() + bytes.remaining() / 2);
    }
  }

  /** Those of all adapters; the usual one first. */
  @Override
  public List<Integer> bauds() {
    return Stream.concat(
            Stream.of(USUAL_BAUD), SensorAdapters.all().stream().flatMap(a -> a.bauds().stream()))
        .distinct()
        .toList();
  }

  @Override
  public void choose(UnitOptions options) {
    wishes = options;
  }

  @Override
  public void opened() {
    found.ifPresent(SensorAdapter::opened);
  }

  @Override
  public void configure(UnitLink toUnit) {
    link = Optional.of(toUnit);
    found.ifPresent(adapter -> adapter.configure(toUnit));
  }
}
