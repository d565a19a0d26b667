package steadyturn.ingest.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A motion table of 200,000 samples, as this program writes it, read from the disk's cache; the
 * score is samples a microsecond, that is million samples a second.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(value = 1, jvmArgs = "-Xmx1g")
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ReadingBenchmark {

  private static final int SAMPLES = 200_000;
  private static final long SEED = 20260301;

  private Path root = Path.of("");

  /** Writes the table. */
  @Setup
  public void write() throws IOException {
    root = Files.createTempDirectory("reading");
    Random random = new Random(SEED);
    double[][] columns = new double[7][SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      columns[0][i] = i / 500.0;
      for (int c = 1; c < 7; c++) {
        columns[c][i] = 5 * random.nextGaussian();
      }
    }
    UnitStream unit =
        new UnitStream(
            UnitFacts.plain(BodyPoint.PELVIS, 500),
            columns[0],
            new double[][] {columns[1], columns[2], columns[3]},
            new double[][] {columns[4], columns[5], columns[6]});
    Player player = Player.unmeasured("p01", Handedness.RIGHT);
    RecordingWriter.into(root, "Benchmark")
        .write(
            new Recording("made", player, List.of(unit), List.of()),
            RunLabel.lesson("p01", "01"),
            LocalDateTime.of(2026, 1, 1, 9, 0));
  }

  /** From bytes to columns. */
  @Benchmark
  @OperationsPerInvocation(SAMPLES)
  public List<UnitStream> table() {
    return RecordingReader.readUnits(Archive.open(root).sessions().get(0).runs().get(0));
  }

  /** Takes the table away. */
  @TearDown
  public void remove() throws IOException {
    List<Path> all;
    try (Stream<Path> paths = Files.walk(root)) {
      all = paths.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }
}
