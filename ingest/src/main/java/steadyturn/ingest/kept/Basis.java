package steadyturn.ingest.kept;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What an answer is going to rest on, looked at before anything is read for it.
 *
 * @param lookedNanos when it was looked at by this machine's clock, ns since 1970
 * @param sinceNanos the same by {@link System#nanoTime}
 */
public record Basis(Path root, List<InputFile> inputs, long lookedNanos, long sinceNanos) {

  /** Looks at files of an archive. */
  static Basis look(Path root, List<Path> files) throws IOException {
    long lookedNanos = System.currentTimeMillis() * 1_000_000;
    long sinceNanos = System.nanoTime();
    List<InputFile> inputs = new ArrayList<>();
    for (Path file : files) {
      inputs.add(InputFile.look(root, file));
    }
    return new Basis(root, List.copyOf(inputs), lookedNanos, sinceNanos);
  }

  public Basis {
    inputs = List.copyOf(inputs);
  }

  /** Whether these files are there now, no other, and in the states they were in. */
  boolean isUntouched(List<Path> filesNow) throws IOException {
    if (!names().equals(filesNow.stream().map(f -> InputFile.name(root, f)).toList())) {
      return false;
    }
    for (InputFile input : inputs) {
      if (!FileState.of(root.resolve(input.name())).equals(input.state())) {
        return false;
      }
    }
    return true;
  }

  List<String> names() {
    return inputs.stream().map(InputFile::name).toList();
  }
}
