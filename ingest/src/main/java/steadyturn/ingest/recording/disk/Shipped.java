package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Texts that come with the program, each beside the class that needs it. */
public final class Shipped {

  private Shipped() {}

  public static String text(Class<?> beside, String name) {
    try (InputStream in = Objects.requireNonNull(beside.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
