package steadyturn.ingest.kept;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.zip.CRC32C;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.DatasetFiles;

/**
 * A file that keeps an answer with all it rests on: first lines of text (claims about what made it,
 * then every input with its state and sum), an empty line, the answer's bytes. It holds while the
 * claims do and the inputs are the same files with the same content.
 *
 * <p>An input is not read again where the file system shows it in the same state and its last
 * change lies two seconds before the look at it, as a change within one tick of a file system's
 * clock would not show (the rule of version control, which meets the same trap).
 */
public final class KeptAnswer {

  private static final String FIRST = "steadyturn kept answer 1";

  private KeptAnswer() {}

  /** Looks at the files an answer will rest on, before they are read; empty where that fails. */
  public static Optional<Basis> look(Path root, List<Path> files) {
    try {
      return Optional.of(Basis.look(root, files));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /**
   * Keeps an answer, unless an input has changed since the look, or the archive cannot be written
   * or is being written by another: then it is reckoned again the next time.
   *
   * @param filesNow the files that speak now
   * @param claims lines that must hold for the answer to hold; none may have a line break
   */
  public static void keep(
      Path file, Basis basis, List<Path> filesNow, List<String> claims, byte[] answer) {
    try {
      if (basis.isUntouched(filesNow)) {
        write(file, basis, claims, ByteBuffer.wrap(answer));
      }
    } catch (IOException | RecordingException notNow) {
      return; // nothing was promised
    }
  }

  private static void write(Path file, Basis basis, List<String> claims, ByteBuffer answer) {
    StringBuilder head = new StringBuilder(FIRST + "\n");
    claims.forEach(claim -> head.append("claim\t").append(claim).append('\n'));
    basis.inputs().forEach(input -> head.append(input.line()).append('\n'));
    head.append("answer\t").append(sum(answer)).append('\n');
    long tookNanos = System.nanoTime() - basis.sinceNanos();
    head.append("looked\t").append(basis.lookedNanos()).append('\t').append(tookNanos);
    head.append("\n\n");
    ArchiveLock.ifNobodyWrites(
        basis.root(),
        () -> {
          DatasetFiles.derivatives(basis.root(), "steadyturn", "0.1");
          WholeFile.write(
              file,
              out -> {
                out.write(head.toString().getBytes(StandardCharsets.UTF_8));
                out.write(answer.array(), answer.arrayOffset(), answer.limit());
              });
          return file;
        });
  }

  private static long sum(ByteBuffer answer) {
    CRC32C sum = new CRC32C();
    sum.update(answer.array(), answer.arrayOffset(), answer.limit());
    return sum.getValue();
  }

  /**
   * The answer that a file keeps, where it holds.
   *
   * @param filesNow the files that speak now
   * @param holds whether the claims do
   */
  public static Optional<ByteBuffer> find(
      Path file, Path root, List<Path> filesNow, Predicate<List<String>> holds) {
    try {
      byte[] all = Files.readAllBytes(file);
      return read(file, root, all).filter(kept -> kept.holds(filesNow, holds)).map(Kept::answer);
    } catch (NoSuchFileException none) {
      return Optional.empty();
    } catch (IOException | RuntimeException broken) {
      return Optional.empty(); // reckoned again, and written over
    }
  }

  private static Optional<Kept> read(Path file, Path root, byte[] all) throws IOException {
    int end = headEnd(all);
    if (end < 0) {
      return Optional.empty();
    }
    List<String> lines =
        Arrays.asList(new String(all, 0, end, StandardCharsets.UTF_8).split("\n", -1));
    if (!lines.get(0).equals(FIRST)) {
      return Optional.empty();
    }
    List<String> claims = new ArrayList<>();
    List<InputFile> inputs = new ArrayList<>();
    long sum = -1;
    long lookedNanos = Long.MIN_VALUE;
    for (String line : lines.subList(1, lines.size())) {
      if (line.startsWith("claim\t")) {
        claims.add(line.substring("claim\t".length()));
      } else if (line.startsWith("input\t")) {
        inputs.add(InputFile.of(line));
      } else if (line.startsWith("answer\t")) {
        sum = Long.parseLong(line.substring("answer\t".length()));
      } else {
        lookedNanos = looked(file, line);
      }
    }
    ByteBuffer answer = ByteBuffer.wrap(all, end + 2, all.length - end - 2).slice();
    return sum(answer) == sum
        ? Optional.of(new Kept(file, root, claims, inputs, lookedNanos, answer))
        : Optional.empty();
  }

  /** By the slower of two clocks: this machine's, and that of the disk the file was written to. */
  private static long looked(Path file, String line) throws IOException {
    String[] parts = line.split("\t", -1);
    long writtenNanos = FileState.nanos(Files.getLastModifiedTime(file));
    return Math.min(Long.parseLong(parts[1]), writtenNanos - Long.parseLong(parts[2]));
  }

  private static int headEnd(byte[] all) {
    for (int i = 0; i + 1 < all.length; i++) {
      if (all[i] == '\n' && all[i + 1] == '\n') {
        return i;
      }
    }
    return -1;
  }

  /** What a file keeps. */
  private record Kept(
      Path file,
      Path root,
      List<String> claims,
      List<InputFile> inputs,
      long lookedNanos,
      ByteBuffer answer) {

    boolean holds(List<Path> filesNow, Predicate<List<String>> claimsHold) {
      List<String> names = filesNow.stream().map(f -> InputFile.name(root, f)).toList();
      if (!claimsHold.test(claims)
          || !names.equals(inputs.stream().map(InputFile::name).toList())) {
        return false;
      }
      try {
        boolean wasRead = false;
        for (InputFile input : inputs) {
          InputFile.Still still = input.still(root, lookedNanos);
          if (still == InputFile.Still.CHANGED) {
            return false;
          }
          wasRead |= still == InputFile.Still.READ;
        }
        if (wasRead) {
          lookAgain(filesNow);
        }
        return true;
      } catch (IOException gone) {
        return false;
      }
    }

    /** Notes the states of now, so that the next time nothing needs to be read. */
    private void lookAgain(List<Path> filesNow) throws IOException {
      Basis basis = Basis.look(root, filesNow);
      if (sums(basis.inputs()).equals(sums(inputs))) {
        try {
          write(file, basis, claims, answer);
        } catch (RecordingException readOnly) {
          return; // read again the next time
        }
      }
    }

    private static List<String> sums(List<InputFile> inputs) {
      return inputs.stream().map(InputFile::sum).toList();
    }
  }
}
