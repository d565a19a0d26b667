package steadyturn.analysis.lesson;

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
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.ingest.sample.Recording;

/**
 * Simulated lessons of three units at 500 Hz with waggles: milliseconds a lesson, all cores. The
 * lesson of one swing lasts about a minute, that of ten about three.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx1g")
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class LessonBenchmark {

  private static final long SEED = 20260303;

  private final Recording one = lesson(1);
  private final Recording ten = lesson(10);

  private static Recording lesson(int hits) {
    return LessonSimulator.simulate(LessonSpec.standard().withHits(hits).withPractices(0), SEED)
        .recording();
  }

  /** Finds the swings and their key positions. */
  @Benchmark
  public List<Swing> findTenSwings() {
    return SwingFinder.withDefaults().find(ten);
  }

  /** From samples to measures with intervals: what a teacher waits for after a swing. */
  @Benchmark
  public List<LessonResult> oneSwing() {
    return LessonAnalyzer.withDefaults().analyze(List.of(one));
  }

  /** Ten swings, estimated together. */
  @Benchmark
  public List<LessonResult> tenSwings() {
    return LessonAnalyzer.withDefaults().analyze(List.of(ten));
  }
}
