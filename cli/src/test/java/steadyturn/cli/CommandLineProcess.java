package steadyturn.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program as a process of its own, which can be killed; what it prints goes to two files. */
public record CommandLineProcess(Process process, Path outFile, Path errFile) {

  /** Starts it. */
  public static CommandLineProcess start(Path folder, String... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx256m",
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            "steadyturn.cli.Main"));
    command.addAll(List.of(args));
    Path out = Files.createTempFile(folder, "out", ".txt");
    Path err = Files.createTempFile(folder, "err", ".txt");
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    return new CommandLineProcess(process, out, err);
  }

  /** Waits for its end; its exit code. */
  public int exitCode() throws InterruptedException {
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IllegalStateException("still running after two minutes");
    }
    return process.exitValue();
  }

  /** What it printed as results so far. */
  public String out() throws IOException {
    return Files.readString(outFile, StandardCharsets.UTF_8);
  }

  /** What it printed as remarks so far. */
  public String err() throws IOException {
    return Files.readString(errFile, StandardCharsets.UTF_8);
  }
}
