package steadyturn.analysis.coach.teaching;

import java.io.Serial;
import java.util.Locale;

/** A teaching file that cannot be used; the message says where, what, and what to do. */
public final class TeachingException extends RuntimeException {

  @Serial private static final long serialVersionUID = 1;

  TeachingException(String message) {
    super(message);
  }

  /** With a message made by {@link String#format}, the same in every locale. */
  @SuppressWarnings("AnnotateFormatMethod") // its annotation would be one more dependency
  static TeachingException of(String format, Object... args) {
    return new TeachingException(String.format(Locale.ROOT, format, args));
  }
}
