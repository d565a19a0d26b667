package steadyturn.ingest.live;

import java.nio.ByteBuffer;
import java.util.function.IntConsumer;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.HostTime;

/**
 * A unit without a port: one byte is one sample, whose acceleration tells its number. What happens
 * before each sample is read can be chosen, such as a failure.
 */
final class FedUnit implements SensorAdapter {

  static final double RATE_HZ = 500;
  static final int A_BLOCK = 10;

  private static final int BASE = 200;

  private final IntConsumer before;
  private int next;

  FedUnit(IntConsumer before) {
    this.before = before;
  }

  @Override
  public String name() {
    return "fed";
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    while (bytes.hasRemaining()) {
      bytes.get();
      int number = next++;
      before.accept(number);
      double x = 0.1 * (number % BASE);
      double y = 0.1 * (number / BASE % BASE);
      sink.sample(number / RATE_HZ, x, y, 0, 0, 0, 0);
    }
  }

  static UnitHello hello(String name, String serialNumber) {
    return new UnitHello(name, serialNumber, RATE_HZ, 156.9, 34.9);
  }

  /** Feeds so many samples to a unit, a block at a time, without waiting for their time. */
  static void feed(LiveUnit unit, int samples, double fromS) {
    byte[] block = new byte[A_BLOCK];
    for (int k = 0; k < samples / A_BLOCK; k++) {
      unit.bytes(block, A_BLOCK, fromS + k * A_BLOCK / RATE_HZ, HostTime.wallS());
    }
  }
}
