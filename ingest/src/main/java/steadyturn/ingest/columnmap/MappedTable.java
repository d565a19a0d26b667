package steadyturn.ingest.columnmap;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.TableShape;
import steadyturn.ingest.recording.table.Encoding;
import steadyturn.ingest.recording.table.RecordingException;

/** The rows of a table of any shape: header lines and comments passed, gzip opened. */
final class MappedTable implements Closeable {

  private final Path file;
  private final TableShape shape;
  private final CSVParser parser;
  private final Iterator<CSVRecord> records;
  private final List<String> names = new ArrayList<>();
  private long line;

  private MappedTable(Path file, TableShape shape, CSVParser parser) {
    this.file = file;
    this.shape = shape;
    this.parser = parser;
    records = parser.iterator();
  }

  static MappedTable open(Path file, TableShape shape) {
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(shape.delimiter())
            .setIgnoreEmptyLines(true)
            .setTrim(true)
            .get();
    try {
      BufferedReader reader =
          new BufferedReader(new InputStreamReader(bytes(file), StandardCharsets.UTF_8), 1 << 16);
      for (int i = 0; i < shape.skipLines(); i++) {
        reader.readLine();
      }
      MappedTable table =
          new MappedTable(
              file, shape, CSVParser.builder().setReader(reader).setFormat(format).get());
      table.readHeader();
      return table;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private static InputStream bytes(Path file) throws IOException {
    InputStream raw = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    raw.mark(4);
    byte[] head = raw.readNBytes(3);
    raw.reset();
    if (head.length == 0) {
      throw RecordingException.of(file, "is empty. Copy or export it again.");
    }
    if (Encoding.starts(head, 0x1F, 0x8B)) {
      return new GZIPInputStream(raw, 1 << 16);
    }
    if (Encoding.isUtf16(head)) {
      throw RecordingException.of(file, "is written in UTF-16. Save it as UTF-8 text.");
    }
    raw.skipNBytes(Encoding.markBytes(head));
    return raw;
  }

  private void readHeader() {
    for (int i = 0; i < shape.headerLines(); i++) {
      if (!hasNext()) {
        throw RecordingException.of(
            file, "ends within its header. Check skip_lines and header_lines of the map.");
      }
      CSVRecord record = next();
      if (i == 0) {
        record.forEach(names::add);
      }
    }
  }

  private Optional<CSVRecord> waiting = Optional.empty();

  boolean hasNext() {
    try {
      while (waiting.isEmpty() && records.hasNext()) {
        CSVRecord record = records.next();
        line = shape.skipLines() + parser.getCurrentLineNumber();
        waiting = Optional.of(record).filter(r -> !isComment(r));
      }
    } catch (UncheckedIOException e) {
      throw RecordingException.io(file, new IOException(e));
    }
    return waiting.isPresent();
  }

  private boolean isComment(CSVRecord record) {
    return !shape.comment().isEmpty() && record.get(0).startsWith(shape.comment());
  }

  CSVRecord next() {
    if (!hasNext()) {
      throw new IllegalStateException("no more rows in " + file);
    }
    CSVRecord next = waiting.orElseThrow();
    waiting = Optional.empty();
    return next;
  }

  /** The line of the row that {@link #next} gave last, counted from 1. */
  long line() {
    return line;
  }

  /** What the header calls the column of an index, or its number. */
  String name(int index) {
    return index < names.size() ? names.get(index) : "number " + (index + 1);
  }

  /** The index of a column, from 0. */
  int index(ColumnRef column) {
    if (column.number() > 0) {
      return column.number() - 1;
    }
    int at = names.indexOf(column.name());
    if (at < 0) {
      throw RecordingException.of(
          file,
          "has no column \""
              + column.name()
              + "\". Its header names: "
              + String.join(", ", names.subList(0, Math.min(12, names.size())))
              + (names.size() > 12 ? ", ..." : "")
              + ". Correct the map.");
    }
    if (names.lastIndexOf(column.name()) != at) {
      throw RecordingException.of(
          file, "has two columns \"" + column.name() + "\". Give the column's number in the map.");
    }
    return at;
  }

  @Override
  public void close() {
    try {
      parser.close();
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }
}
