package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.ingest.recording.disk.Shipped;

/** Writes what a new unit needs: the adapter's skeleton, its test, its registration. */
@Command(name = "new")
final class UnitsNewCommand implements Callable<Integer> {

  private static final Path SENSOR = Path.of("steadyturn", "ingest", "sensor");

  @Mixin private Console console;

  @Parameters(paramLabel = "NAME")
  private String name = "";

  @Option(names = "--source", paramLabel = "DIR")
  private Path source = Path.of(System.getProperty("steadyturn.home", "."));

  @Override
  public Integer call() throws IOException {
    if (!name.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*")) {
      throw console.wrongUsage("NAME must be lower-case words joined by hyphens");
    }
    Path main = source.resolve(Path.of("ingest", "src", "main"));
    Path test = source.resolve(Path.of("ingest", "src", "test"));
    Path services =
        main.resolve(
            Path.of("resources", "META-INF", "services", "steadyturn.ingest.sensor.SensorAdapter"));
    if (!Files.exists(services)) {
      throw console.wrongUsage(source + " is not this project's source tree; name it by --source");
    }
    String type = typeName(name) + "Adapter";
    write(
        main.resolve("java").resolve(SENSOR).resolve("maker").resolve(type + ".java"),
        filled("Adapter.java.txt", type));
    write(
        test.resolve("java").resolve(SENSOR).resolve("kit").resolve(type + "Test.java"),
        filled("AdapterTest.java.txt", type));
    Path captures = test.resolve("resources").resolve(SENSOR).resolve("kit").resolve(name);
    Files.createDirectories(captures);
    String line = "steadyturn.ingest.sensor.maker." + type + "\n";
    String registered = Files.readString(services);
    if (!registered.contains(line)) {
      Files.writeString(services, registered + line);
      console.out().println("registered in " + services);
    }
    console.out().println("put the four captures into " + captures);
    console.out().println("then: mvn -Dquick -pl ingest test -Dtest=" + type + "Test");
    return Failures.DONE;
  }

  private String filled(String template, String type) {
    String text = Shipped.text(UnitsNewCommand.class, template);
    return text.replace("TYPE", type).replace("NAME", name);
  }

  private void write(Path file, String text) throws IOException {
    if (Files.exists(file)) {
      throw console.wrongUsage(file + " exists already; choose another name");
    }
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    console.out().println("wrote " + file);
  }

  private static String typeName(String words) {
    StringBuilder type = new StringBuilder();
    for (String word : words.split("-", -1)) {
      type.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
    }
    return type.toString();
  }
}
