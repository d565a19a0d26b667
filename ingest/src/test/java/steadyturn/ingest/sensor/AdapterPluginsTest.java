package steadyturn.ingest.sensor;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Adapters compiled outside, in jars beside the program. */
class AdapterPluginsTest {

  private static final String SERVICES = "META-INF/services/steadyturn.ingest.sensor.SensorAdapter";

  @TempDir private Path folder;

  @AfterEach
  void nothingStaysLoaded() throws IOException {
    AdapterPlugins.load(folder.resolve("none"));
  }

  /** Compiles a class of the first contract, name and read alone, and packs it. */
  private void jar(String file, String type, String name, String constructor) throws IOException {
    Path source = folder.resolve(type + ".java");
    Files.writeString(
        source,
        "package outside; import java.nio.ByteBuffer; import steadyturn.ingest.sensor.*;"
            + ("public final class " + type + " implements SensorAdapter {")
            + ("public " + type + "() {" + constructor + "}")
            + ("public String name() { return \"" + name + "\"; }")
            + "public void read(ByteBuffer b, SampleSink s) { while (b.hasRemaining()) {"
            + "s.sample(b.get(), 0, 0, 9.8, 0, 0, 0); } } }");
    int failed =
        ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                null,
                null,
                "-cp",
                System.getProperty("java.class.path"),
                "-d",
                folder.toString(),
                source.toString());
    assertThat(failed).isZero();
    Path plugins = Files.createDirectories(folder.resolve("plugins"));
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(plugins.resolve(file)))) {
      out.putNextEntry(new JarEntry(SERVICES));
      out.write(("outside." + type + "\n").getBytes(UTF_8));
      out.putNextEntry(new JarEntry("outside/" + type + ".class"));
      out.write(Files.readAllBytes(folder.resolve("outside").resolve(type + ".class")));
    }
  }

  @Test
  void aGoodJarServesAndBrokenOnesAreNamed() throws IOException {
    jar("good.jar", "Good", "outside-box", "");
    jar("fails.jar", "Fails", "failing-box", "throw new IllegalStateException(\"no driver\");");
    jar("twice.jar", "Twice", "text-line", "");
    Files.writeString(folder.resolve("plugins").resolve("noise.jar"), "no archive");
    List<AdapterPlugins.PassedOver> passedOver = AdapterPlugins.load(folder.resolve("plugins"));
    assertThat(passedOver)
        .extracting(one -> one.jar().getFileName().toString())
        .containsExactly("fails.jar", "noise.jar", "twice.jar");
    assertThat(passedOver.get(2).why()).contains("text-line already");
    SensorAdapter adapter = SensorAdapters.named("outside-box").orElseThrow();
    SampleCount count = new SampleCount();
    new AdapterFeed(adapter, count).feed(new byte[] {1, 2, 3}, 3);
    assertThat(count.samples()).isEqualTo(3);
    // What it does not say has the usual answer.
    assertThat(adapter.bauds()).containsExactly(SensorAdapter.USUAL_BAUD);
    assertThat(SensorAdapters.named("outside-box"))
        .isNotSameAs(SensorAdapters.named("outside-box"));
    AdapterPlugins.load(folder.resolve("none"));
    assertThat(SensorAdapters.named("outside-box")).isEmpty();
  }
}
