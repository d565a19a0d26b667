package steadyturn.cli.output;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
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
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.cli.output.json.JsonReport;
import steadyturn.cli.output.table.TableReport;
import steadyturn.cli.output.tsv.TsvReport;

/** The results of ten swings as text; milliseconds a report, one thread. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ReportBenchmark {

  private static final long SEED = 20260304;

  private final List<LessonResult> results = results();

  private static List<LessonResult> results() {
    LessonSpec spec = LessonSpec.standard().withHits(10).withPractices(0).withRateHz(200);
    return LessonAnalyzer.withDefaults()
        .analyze(List.of(LessonSimulator.simulate(spec, SEED).recording()));
  }

  /** JSON for scripts. */
  @Benchmark
  public String json() throws IOException {
    StringWriter to = new StringWriter();
    JsonReport.write(results, AnalysisSettings.defaults(), to);
    return to.toString();
  }

  /** The table with every key position of every swing. */
  @Benchmark
  public String table() throws IOException {
    StringWriter to = new StringWriter();
    TableReport.write(results, Map.of(), true, to);
    return to.toString();
  }

  /** Rows for a spreadsheet. */
  @Benchmark
  public String tsv() throws IOException {
    StringWriter to = new StringWriter();
    TsvReport.write(results, to);
    return to.toString();
  }
}
