package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import javax.lang.model.SourceVersion;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.terminal.Failures;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.ProgramVersion;
import steadyturn.ingest.recording.disk.Shipped;

/** Writes a project of its own for a new unit: adapter, conformance test, registration, README. */
@Command(name = "new")
final class UnitsNewCommand implements Callable<Integer> {

  private static final String SERVICE = "META-INF/services/steadyturn.ingest.sensor.SensorAdapter";

  @Mixin private Console console;

  @Parameters(index = "0", paramLabel = "NAME")
  private String name = "";

  @Parameters(index = "1", arity = "0..1", paramLabel = "DIR")
  private Optional<Path> folder = Optional.empty();

  @Option(names = "--repository", paramLabel = "FOLDER")
  private Path repository = Path.of(System.getProperty("user.home", "."), "steadyturn-repository");

  @Override
  public Integer call() throws IOException {
    if (!name.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*") || SourceVersion.isKeyword(packageName())) {
      throw console.wrongUsage("NAME must be lower-case words joined by hyphens");
    }
    Path project = folder.orElse(Path.of(name));
    if (Files.exists(project)) {
      throw console.wrongUsage(project + " exists already; choose another folder");
    }
    Map<String, String> files = new LinkedHashMap<>();
    String inPackage = "java/" + packageName() + "/";
    files.put("pom.xml", "pom.xml.txt");
    files.put("README.md", "README.md.txt");
    files.put("src/main/" + inPackage + type() + ".java", "Adapter.java.txt");
    files.put("src/main/resources/" + SERVICE, "service.txt");
    files.put("src/test/" + inPackage + type() + "Test.java", "AdapterTest.java.txt");
    files.put("src/test/" + inPackage + "MadeUnit.java", "MadeUnit.java.txt");
    for (Map.Entry<String, String> file : files.entrySet()) {
      Path path = project.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, filled(file.getValue()));
      console.out().println(path);
    }
    boolean isPublished = Files.isDirectory(repository.resolve("steadyturn").resolve("ingest"));
    if (!isPublished) {
      console.out().println(Words.say("units.new.publish", repository));
    }
    console.out().println(Words.say("units.new.next", project));
    return Failures.DONE;
  }

  private String filled(String template) {
    return Shipped.text(UnitsNewCommand.class, "project/" + template)
        .replace("REPOSITORY_FOLDER", repository.toAbsolutePath().toString())
        .replace("REPOSITORY", repository.toAbsolutePath().toUri().toString())
        .replace("PACKAGE", packageName())
        .replace("TYPE", type())
        .replace("NAME", name)
        .replace("VERSION", ProgramVersion.current());
  }

  private String packageName() {
    return name.replace("-", "");
  }

  private String type() {
    StringBuilder type = new StringBuilder();
    for (String word : name.split("-", -1)) {
      type.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
    }
    return type + "Adapter";
  }
}
