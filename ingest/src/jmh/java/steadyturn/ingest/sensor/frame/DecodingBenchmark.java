package steadyturn.ingest.sensor.frame;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.lab.UnitEncoder;

/**
 * The bytes of 50,000 samples of a live unit through the adapter that reads them, in blocks of 256
 * bytes as a port gives them; the score is samples a microsecond. A unit sends 0.001 at 1 kHz.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DecodingBenchmark {

  private static final int SAMPLES = 50_000;
  private static final int BLOCK = 256;
  private static final long SEED = 20260302;

  private final byte[] frames = bytes(new BinaryFrameEncoder(16, 2000));
  private final byte[] lines = bytes(new TextLineEncoder());

  private static byte[] bytes(UnitEncoder encoder) {
    Random random = new Random(SEED);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int i = 0; i < SAMPLES; i++) {
      double[] accel = {random.nextGaussian(), random.nextGaussian(), 9.8};
      double[] gyro = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
      out.writeBytes(encoder.sample(i, 1000L * i, accel, gyro));
    }
    return out.toByteArray();
  }

  /** Counts what comes out, so that nothing is thrown away unread. */
  private static final class Sum implements SampleSink {
    private double sum;

    @Override
    public void sample(
        double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
      sum += timeS + ax + ay + az + gx + gy + gz;
    }

    @Override
    public void hello(UnitHello hello) {}

    @Override
    public void skipped(int bytes) {}

    @Override
    public void lost(int count) {}
  }

  private static double decode(SensorAdapter adapter, byte[] bytes) {
    Sum sum = new Sum();
    AdapterFeed feed = new AdapterFeed(adapter, sum);
    for (int from = 0; from < bytes.length; from += BLOCK) {
      byte[] block = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + BLOCK));
      feed.feed(block, block.length);
    }
    return sum.sum;
  }

  /** Our binary frames. */
  @Benchmark
  @OperationsPerInvocation(SAMPLES)
  public double binaryFrames() {
    return decode(new BinaryFrameAdapter(), frames);
  }

  /** Our text lines. */
  @Benchmark
  @OperationsPerInvocation(SAMPLES)
  public double textLines() {
    return decode(new TextLineAdapter(), lines);
  }
}
