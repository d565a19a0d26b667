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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
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

  private static final String ADAPTER = "src/main/java/tinybox/TinyBoxAdapter.java";

  @TempDir private Path folder;

  private int run(String name) {
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    String project = folder.resolve("project").toString();
    return Commands.run(nowhere, nowhere, "units", "new", name, project, "--repository", "repo");
  }

  private Path written(String file) {
    return folder.resolve("project").resolve(file);
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
    Path classes = Files.createDirectories(folder.resolve("classes"));
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
                written(ADAPTER).toString());
    assertThat(compiled).isZero();
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {classes.toUri().toURL()}, getClass().getClassLoader())) {
      SensorAdapter adapter =
          (SensorAdapter)
              loader.loadClass("tinybox.TinyBoxAdapter").getDeclaredConstructor().newInstance();
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
        Files.readAllLines(written(ADAPTER)).stream()
            .map(String::strip)
            .filter(l -> !l.isEmpty() && !l.startsWith("//") && !l.startsWith("/**"))
            .filter(l -> !l.startsWith("import "))
            .count();
    assertThat(lines + 1).isLessThan(40);
    assertThat(
            written("src/main/resources/META-INF/services/steadyturn.ingest.sensor.SensorAdapter"))
        .hasContent("tinybox.TinyBoxAdapter");
  }

  @Test
  void theProjectIsBuiltWithTheVersionsOfThisBuild() throws IOException {
    // Given: a project written by hand beside the pom that knows the versions. Expect: every
    // version
    // it names, of plug-ins and of this program, stands in that pom too; no word is left unfilled.
    run("tiny-box");
    String ours = Files.readString(Path.of("..", "pom.xml"));
    String pom = Files.readString(written("pom.xml"));
    Matcher versions = Pattern.compile("version>([0-9][^<]+)<").matcher(pom);
    while (versions.find()) {
      if (!versions.group(1).equals("0.1")) { // its own
        assertThat(ours).contains(">" + versions.group(1) + "<");
      }
    }
    assertThat(pom)
        .contains("<steadyturn.version>0.1.0-SNAPSHOT<")
        .contains("/repo")
        .contains("<url>file:");
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(Files.readString(file))
            .doesNotContain("NAME", "TYPE", "PACKAGE", "VERSION", "REPOSITORY");
      }
    }
  }

  @Test
  void nothingIsWrittenOver() {
    assertThat(run("Tiny Box")).isEqualTo(Failures.WRONG_USAGE);
    assertThat(run("switch")).isEqualTo(Failures.WRONG_USAGE); // no package can be named so
    assertThat(run("tiny-box")).isZero();
    assertThat(run("tiny-box")).isEqualTo(Failures.WRONG_USAGE);
  }
}
