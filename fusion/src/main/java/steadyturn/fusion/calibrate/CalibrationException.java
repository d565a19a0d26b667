package steadyturn.fusion.calibrate;

/** A recording that cannot give the calibration asked for; the message says what to do. */
public final class CalibrationException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public CalibrationException(String message) {
    super(message);
  }

  public CalibrationException(String message, Throwable cause) {
    super(message, cause);
  }
}
