package steadyturn.fusion.calibrate;

import java.util.Locale;

/** A recording that cannot give the calibration asked for; the message says what to do. */
public final class CalibrationException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public CalibrationException(String message) {
    super(message);
  }

  /** With a message made by {@link String#format}, the same in every locale. */
  @SuppressWarnings("AnnotateFormatMethod") // its annotation would be one more dependency
  static CalibrationException of(String format, Object... args) {
    return new CalibrationException(String.format(Locale.ROOT, format, args));
  }

  public CalibrationException(String message, Throwable cause) {
    super(message, cause);
  }
}
