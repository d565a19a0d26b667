package steadyturn.ingest.recording.table;

import java.io.Closeable;
import java.io.InputStream;
import java.nio.file.Path;

/**
 * Reads a motion table line by line out of a byte buffer, straight into columns: no text and no
 * object a sample. Time is counted from the first sample and must grow.
 */
public final class MotionStream implements Closeable {

  private final Path file;
  private final LineBuffer lines;
  private final byte[] bytes;
  private final MotionLayout layout;
  private final SampleTime time;
  private final MotionTally tally;
  private final int[] slots;
  private final double[] factors;
  private final double[] row;

  private long line;
  private long samples;
  private int decimals;
  private int lastDecimals;
  private boolean brokenEnd;

  public MotionStream(Path file, InputStream in, MotionLayout layout, double rateHz) {
    this.file = file;
    lines = new LineBuffer(file, in);
    bytes = lines.bytes();
    this.layout = layout;
    tally = new MotionTally(file);
    time = new SampleTime(file, layout.hasTime(), rateHz, tally);
    slots = layout.slotOfColumn();
    factors = layout.factorOfColumn();
    row = new double[layout.slots()];
  }

  public MotionTally tally() {
    return tally;
  }

  /**
   * Appends samples until one reaches the instant (it is appended too) or the table ends.
   *
   * @return whether there may be more to read
   */
  public boolean fill(SampleColumns into, double untilS) {
    while (lines.nextLine()) {
      line++;
      if (readRow() && time.places(row, line)) {
        samples++;
        into.append(row);
        if (row[0] >= untilS) {
          return true;
        }
      }
    }
    if (samples == 0) {
      throw RecordingException.of(
          file,
          (line == 0 ? "is empty." : "holds no whole sample.")
              + " Copy the recording again, or take this table out of it.");
    }
    return false;
  }

  /** Reads one line into the row; false when it is to be left out. */
  private boolean readRow() {
    int start = lines.at();
    int at = start;
    if (isLineEnd(bytes[at])) {
      lines.passLineEnd();
      return false;
    }
    int column = 0;
    while (true) {
      if (column == slots.length) {
        throw wrongCount(start);
      }
      if (slots[column] < 0) {
        at = cellEnd(at);
      } else {
        row[slots[column]] = number(at, column) * factors[column];
        at = lines.at();
      }
      column++;
      if (bytes[at] != '\t') {
        break;
      }
      at++;
    }
    lines.moveTo(at);
    return endRow(start, column);
  }

  private boolean endRow(int start, int columns) {
    boolean cut =
        lines.isEndOfFile(lines.at())
            && (brokenEnd || columns < slots.length || decimals < lastDecimals);
    if (cut) {
      tally.cut(line);
    } else if (columns < slots.length) {
      throw wrongCount(start);
    }
    lastDecimals = decimals;
    lines.passLineEnd();
    return !cut;
  }

  /** The number that starts at the index; the cursor moves behind it. */
  private double number(int from, int column) {
    byte[] b = bytes;
    boolean negative = b[from] == '-';
    int first = negative ? from + 1 : from;
    int i = first;
    long digits = 0;
    for (int digit = b[i] - '0'; digit >= 0 && digit <= 9; digit = b[++i] - '0') {
      digits = digits * 10 + digit;
    }
    int count = i - first;
    int behindDot = 0;
    if (b[i] == '.') {
      int dot = i++;
      for (int digit = b[i] - '0'; digit >= 0 && digit <= 9; digit = b[++i] - '0') {
        digits = digits * 10 + digit;
      }
      behindDot = i - dot - 1;
    }
    count += behindDot;
    if (!isCellEnd(b[i]) || count == 0 || count > Numbers.EXACT_DIGITS) {
      return oddNumber(from, column);
    }
    lines.moveTo(i);
    decimals = behindDot;
    double value = Numbers.scaled(digits, behindDot);
    return negative ? -value : value;
  }

  /** Exponents, long forms, lost values and what is wrong. */
  private double oddNumber(int from, int column) {
    int to = cellEnd(from);
    lines.moveTo(to);
    if (Numbers.isMissing(bytes, from, to)) {
      tally.missing(line);
      return Double.NaN;
    }
    double value = Numbers.parse(bytes, from, to);
    if (Double.isNaN(value)) {
      if (!lines.isEndOfFile(to)) {
        throw RecordingException.at(
            file, line, layout.columnName(column), Numbers.complaint(lines.text(from, to)));
      }
      brokenEnd = true;
    }
    return value;
  }

  private RecordingException wrongCount(int start) {
    int cells = 1;
    int i = start;
    for (; !isLineEnd(bytes[i]); i++) {
      if (bytes[i] == '\t') {
        cells++;
      }
    }
    return RecordingException.at(
        file,
        line,
        cells
            + (cells == 1 ? " column" : " columns")
            + " where the channels file names "
            + slots.length
            + ". Separate columns by one tab and give the channels file one line a column.");
  }

  private int cellEnd(int from) {
    int i = from;
    while (!isCellEnd(bytes[i])) {
      i++;
    }
    return i;
  }

  private static boolean isCellEnd(byte b) {
    return b == '\t' || isLineEnd(b);
  }

  private static boolean isLineEnd(byte b) {
    return b == '\n' || b == '\r';
  }

  @Override
  public void close() {
    lines.close();
  }
}
