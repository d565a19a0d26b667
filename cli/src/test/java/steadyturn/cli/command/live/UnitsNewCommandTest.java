package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.command.Commands;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;

class UnitsNewCommandTest {

  private static final String SERVICES =
      "ingest/src/main/resources/META-INF/services/steadyturn.ingest.sensor.SensorAdapter";
  private static final String ADAPTER =
      "ingest/src/main/java/steadyturn/ingest/sensor/maker/TinyBoxAdapter.java";

  @TempDir private Path source;

  private int run(String... more) throws IOException {
    Files.createDirectories(source.resolve(SERVICES).getParent());
    if (!Files.exists(source.resolve(SERVICES))) {
      Files.writeString(
          source.resolve(SERVICES), "steadyturn.ingest.sensor.frame.TextLineAdapter\n");
    }
    List<String> words = new ArrayList<>(List.of("units", "new", "--source", source.toString()));
    words.addAll(List.of(more));
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    return Commands.run(nowhere, nowhere, words.toArray(String[]::new));
  }

  /** The frames in the box of docs/how-to/add-a-unit.md. */
  private static byte[] printedFrames() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (String line : Files.readAllLines(Path.of("..", "docs", "how-to", "add-a-unit.md"))) {
      if (line.startsWith("aa 55 ")) {
        bytes.writeBytes(HexFormat.ofDelimiter(" ").parseHex(line));
      }
    }
    return bytes.toByteArray();
  }

  @Test
  void theSkeletonCompilesAndReadsTheFramesOfTheHowTo() throws Exception {
    assertThat(run("tiny-box")).isZero();
    List<double[]> samples = new ArrayList<>();
    Path classes = Files.createDirectories(source.resolve("classes"));
    int compiled =
        ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                null,
                null,
                "-cp",
                System.getProperty("java.class.path"),
                "-d",
                classes.toString(),
                source.resolve(ADAPTER).toString());
    assertThat(compiled).isZero();
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {classes.toUri().toURL()}, getClass().getClassLoader())) {
      SensorAdapter adapter =
          (SensorAdapter)
              loader
                  .loadClass("steadyturn.ingest.sensor.maker.TinyBoxAdapter")
                  .getDeclaredConstructor()
                  .newInstance();
      byte[] bytes = printedFrames();
      new AdapterFeed(adapter, keepIn(samples)).feed(bytes, bytes.length);
      assertThat(adapter.name()).isEqualTo("tiny-box");
    }
    // As the how-to says: 200 Hz, 2050 counts of 16 g are 9.82 m/s^2.
    assertThat(samples).hasSize(2);
    assertThat(samples.get(1)[0] - samples.get(0)[0]).isCloseTo(0.005, within(1e-9));
    assertThat(samples.get(0)[3]).isCloseTo(9.8165, within(1e-3));
  }

  private static SampleSink keepIn(List<double[]> samples) {
    return new SampleSink() {
      @Override
      public void hello(UnitHello hello) {}

      @Override
      public void sample(
          double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
        samples.add(new double[] {timeS, ax, ay, az, gx, gy, gz});
      }

      @Override
      public void skipped(int bytes) {
        throw new AssertionError(bytes + " bytes of the how-to were skipped");
      }
    };
  }

  @Test
  void adapterAndRegistrationAreUnder40LinesWithoutComments() throws IOException {
    run("tiny-box");
    long lines =
        Files.readAllLines(source.resolve(ADAPTER)).stream()
            .map(String::strip)
            .filter(l -> !l.isEmpty() && !l.startsWith("//") && !l.startsWith("/**"))
            .count();
    assertThat(lines + 1).isLessThan(40);
    assertThat(Files.readString(source.resolve(SERVICES)))
        .endsWith("steadyturn.ingest.sensor.maker.TinyBoxAdapter\n");
  }

  @Test
  void nothingIsWrittenOver() throws IOException {
    assertThat(run("tiny-box")).isZero();
    assertThat(run("tiny-box")).isEqualTo(Failures.WRONG_USAGE);
    assertThat(run("Tiny Box")).isEqualTo(Failures.WRONG_USAGE);
  }
}
