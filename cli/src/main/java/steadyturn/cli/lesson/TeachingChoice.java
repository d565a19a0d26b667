package steadyturn.cli.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;

/** Whose limits, findings and drills a command goes by. */
public final class TeachingChoice {

  @Option(names = "--teaching", paramLabel = "FILE")
  private Optional<Path> file = Optional.empty();

  /** Whether a teacher's own was named, which is to be read even where nothing asks for it. */
  public boolean isNamed() {
    return file.isPresent();
  }

  public Teaching read() throws IOException {
    return file.isPresent() ? TeachingReader.read(file.get()) : TeachingReader.shipped();
  }
}
