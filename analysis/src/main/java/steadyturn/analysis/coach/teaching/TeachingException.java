package steadyturn.analysis.coach.teaching;

import java.io.Serial;

/** A teaching file that cannot be used; the message says where, what, and what to do. */
public final class TeachingException extends RuntimeException {

  @Serial private static final long serialVersionUID = 1;

  TeachingException(String message) {
    super(message);
  }
}
