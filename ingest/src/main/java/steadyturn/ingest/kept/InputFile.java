package steadyturn.ingest.kept;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;

/**
 * A file that an answer rests on, as it was then.
 *
 * @param name its path from the archive's folder, with slashes
 * @param sum of its content: CRC-32 and CRC-32C, 64 bits in hexadecimal digits. Against chance and
 *     not against a forger, who could as well write the recording anew
 */
record InputFile(String name, FileState state, String sum) {

  private static final int BLOCK_BYTES = 1 << 16;

  static InputFile look(Path root, Path file) throws IOException {
    FileState state = FileState.of(file);
    return new InputFile(name(root, file), state, sumOf(file));
  }

  static String name(Path root, Path file) {
    return root.relativize(file).toString().replace('\\', '/');
  }

  private static String sumOf(Path file) throws IOException {
    CRC32 one = new CRC32();
    CRC32C other = new CRC32C();
    byte[] block = new byte[BLOCK_BYTES];
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(block); read >= 0; read = in.read(block)) {
        one.update(block, 0, read);
        other.update(block, 0, read);
      }
    }
    return String.format(Locale.ROOT, "%08x%08x", one.getValue(), other.getValue());
  }

  /** Whether the file is as it was; read only where its state does not settle that. */
  Still still(Path root, long lookedNanos) throws IOException {
    Path file = root.resolve(name);
    FileState now = FileState.of(file);
    if (now.equals(state) && state.wasSettledAt(lookedNanos)) {
      return Still.SEEN;
    }
    return now.bytes() == state.bytes() && sumOf(file).equals(sum) ? Still.READ : Still.CHANGED;
  }

  /** How it was told that a file is as it was. */
  enum Still {
    SEEN,
    READ,
    CHANGED
  }

  String line() {
    return "input\t"
        + String.join(
            "\t",
            Long.toString(state.bytes()),
            Long.toString(state.modifiedNanos()),
            Long.toString(state.changedNanos()),
            Long.toString(state.node()),
            sum,
            name);
  }

  /** Reads such a line; any other is a fault of the file. */
  static InputFile of(String line) {
    String[] parts = line.split("\t", 7);
    return new InputFile(
        parts[6],
        new FileState(
            Long.parseLong(parts[1]),
            Long.parseLong(parts[2]),
            Long.parseLong(parts[3]),
            Long.parseLong(parts[4])),
        parts[5]);
  }
}
