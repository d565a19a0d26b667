package steadyturn.fusion.orientation;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import steadyturn.fusion.filter.ComplementaryFilter;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.filter.lowpass.LowPassFilter;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Samples a second through each orientation method, one thread, a batch of a million samples of
 * lively movement. The score is samples a microsecond, that is million samples a second.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(value = 1, jvmArgs = "-Xmx1g")
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class OrientationBenchmark {

  private static final int BATCH = 1_000_000;
  private static final long SEED = 20260104;

  /** 285.714 Hz is the rate of the recordings that the published figures rest on. */
  @Param({"285.714", "500"})
  public double rateHz = 500;

  private UnitStream stream = empty();

  private static UnitStream empty() {
    return new UnitStream(
        UnitFacts.plain(BodyPoint.PELVIS, 1), new double[0], new double[3][0], new double[3][0]);
  }

  @Setup
  public void makeStream() {
    Random random = new Random(SEED);
    double[] t = new double[BATCH];
    double[][] a = new double[3][BATCH];
    double[][] g = new double[3][BATCH];
    for (int i = 0; i < BATCH; i++) {
      t[i] = i / rateHz;
      for (int axis = 0; axis < 3; axis++) {
        double phase = t[i] * (1.3 + 0.7 * axis);
        g[axis][i] = 4 * Math.sin(2 * phase) + 0.002 * random.nextGaussian();
        a[axis][i] = 6 * Math.cos(phase) + 4 * random.nextGaussian();
      }
    }
    stream = new UnitStream(UnitFacts.plain(BodyPoint.LEAD_HAND, rateHz), t, a, g);
  }

  @Benchmark
  @OperationsPerInvocation(BATCH)
  public OrientationTrack offline() {
    return OrientationRun.withDefaults().run(stream, OrientationMethod.OFFLINE);
  }

  @Benchmark
  @OperationsPerInvocation(BATCH)
  public OrientationTrack onlineWithTrack() {
    return OrientationRun.withDefaults().run(stream, OrientationMethod.ONLINE);
  }

  @Benchmark
  @OperationsPerInvocation(BATCH)
  public void online(Blackhole sink) {
    feedAll(ErrorStateKalmanFilter.withDefaults(), sink);
  }

  @Benchmark
  @OperationsPerInvocation(BATCH)
  public void lowPass(Blackhole sink) {
    feedAll(LowPassFilter.withDefaults(), sink);
  }

  @Benchmark
  @OperationsPerInvocation(BATCH)
  public void complementary(Blackhole sink) {
    feedAll(ComplementaryFilter.withDefaults(), sink);
  }

  private void feedAll(OrientationFilter filter, Blackhole sink) {
    MutableQuaternion q = new MutableQuaternion();
    for (int i = 0; i < stream.size(); i++) {
      OrientationRun.feed(filter, stream, i);
      filter.copyQEarthUnit(q);
      sink.consume(q.w());
    }
  }
}
