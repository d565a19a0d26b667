package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * Waits for enough bytes to tell which adapter understands them, then is that adapter. Not among
 * the registered ones.
 */
public final class FindingAdapter implements SensorAdapter {

  private static final int ENOUGH_BYTES = 600;
  private static final int MOST_BYTES = 1 << 14;

  private Optional<SensorAdapter> found = Optional.empty();
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

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    if (found.isEmpty() && bytes.remaining() >= nextTryBytes) {
      byte[] all = new byte[bytes.remaining()];
      bytes.get(bytes.position(), all);
      found = SensorAdapters.probe(all);
      arrived(arrivedS);
      nextTryBytes = Math.min(MOST_BYTES / 2, 2 * nextTryBytes);
    }
    if (found.isPresent()) {
      found.get().read(bytes, sink);
    } else if (bytes.remaining() > MOST_BYTES) {
      sink.skipped(bytes.remaining() / 2);
      bytes.position(bytes.position() + bytes.remaining() / 2);
    }
  }
}
