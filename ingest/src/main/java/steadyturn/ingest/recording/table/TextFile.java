package steadyturn.ingest.recording.table;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A small text file read whole. BIDS asks for UTF-8; another encoding is read and told. */
public final class TextFile {

  private TextFile() {}

  public static String read(Path file, List<String> notices) {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(file);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
    if (Encoding.starts(bytes, 0xFF, 0xFE)) {
      return told(file, bytes, StandardCharsets.UTF_16LE, 2, notices);
    }
    if (Encoding.starts(bytes, 0xFE, 0xFF)) {
      return told(file, bytes, StandardCharsets.UTF_16BE, 2, notices);
    }
    int from = Encoding.markBytes(bytes);
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
          .toString();
    } catch (CharacterCodingException e) {
      return told(file, bytes, StandardCharsets.ISO_8859_1, 0, notices);
    }
  }

  private static String told(
      Path file, byte[] bytes, Charset charset, int from, List<String> notices) {
    notices.add(
        RecordingException.place(file, 0, "")
            + ": is not UTF-8; read as "
            + charset.displayName()
            + ". Save it as UTF-8 to be sure of its letters.");
    return new String(bytes, from, bytes.length - from, charset);
  }
}
