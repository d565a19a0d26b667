package steadyturn.fusion.displace;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * One swing of 4.5 s at 500 Hz through the estimate between rests; milliseconds a swing, one
 * thread.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Benchmark)
public class SwingBenchmark {

  private final SwingSpan swing = swing();
  private final LessonEstimate estimate = new LessonEstimate(UnitPriors.calibrated(), 9.80665);

  /** Estimate and motion of one swing. */
  @Benchmark
  public UnitMotion oneSwing() {
    return estimate.fit(List.of(swing), Vector3.ZERO).get(0).motion();
  }

  private static SwingSpan swing() {
    int n = 2250;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / 500.0;
      double moving = time[i] > 1.2 && time[i] < 3 ? Math.sin((time[i] - 1.2) * Math.PI / 0.9) : 0;
      gyro[2][i] = 3 * moving;
      accel[0][i] = 2 * moving;
      accel[2][i] = 9.80665;
    }
    UnitStream samples = new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 500), time, accel, gyro);
    return SwingSpan.of(
        samples, List.of(Anchor.address(0.02, 1.1), Anchor.finish(3.3, 4.4)), List.of());
  }
}
