package steadyturn.ingest.recording.table;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Something in a file stops it from being read or written: where, what was found, what to do. */
public final class RecordingException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private RecordingException(Path file, long line, String column, String message) {
    super(place(file, line, column) + ": " + message);
  }

  /** A fault of the file (or folder) as a whole. */
  public static RecordingException of(Path file, String message) {
    return new RecordingException(file, 0, "", message);
  }

  /** A fault in a line, counted from 1. */
  public static RecordingException at(Path file, long line, String message) {
    return new RecordingException(file, line, "", message);
  }

  /** A fault in a cell. */
  public static RecordingException at(Path file, long line, String column, String message) {
    return new RecordingException(file, line, column, message);
  }

  /** A fault told by the file system. */
  public static RecordingException io(Path file, IOException cause) {
    RecordingException told = of(file, words(cause));
    told.initCause(cause);
    return told;
  }

  private static String words(IOException cause) {
    String why = String.valueOf(cause.getMessage());
    if (cause instanceof NoSuchFileException) {
      return "does not exist. Check the path and the rights to it.";
    }
    if (why.contains("No space left") || why.contains("not enough space")) {
      return "cannot be written, the disk is full ("
          + why
          + "). Make room, or choose another disk.";
    }
    return "cannot be read or written ("
        + cause.getClass().getSimpleName()
        + (cause.getMessage() == null ? "" : " " + why)
        + "). Check the path and the rights to it.";
  }

  /** Where, for a message: {@code x_motion.tsv, line 412, column gyro_z}. */
  public static String place(Path file, long line, String column) {
    StringBuilder place = new StringBuilder(shortName(file));
    if (line > 0) {
      place.append(", line ").append(line);
    }
    if (!column.isEmpty()) {
      place.append(", column ").append(column);
    }
    return place.toString();
  }

  /** BIDS names say by themselves where a file lies; other names get their folder. */
  private static String shortName(Path file) {
    Path name = file.getFileName();
    if (name == null) {
      return file.toString();
    }
    return name.toString().startsWith("sub-") ? name.toString() : file.toString();
  }
}
