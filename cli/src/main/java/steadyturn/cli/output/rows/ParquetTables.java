package steadyturn.cli.output.rows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Collectors;
import steadyturn.analysis.rows.RowColumn;
import steadyturn.analysis.rows.RowTable;
import steadyturn.ingest.recording.disk.PrivateFiles;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * Tables as Parquet files: texts, whole numbers of 32 bits, numbers of 64 bits, each the one
 * nearest to the digits that {@code analyze} prints; {@code NULL} where there is nothing.
 */
public final class ParquetTables {

  private final Path folder;
  private final Connection database;

  /** Tables that this database writes into a folder. */
  public ParquetTables(Path folder, Connection database) {
    this.folder = folder;
    this.database = database;
  }

  /** The file of a table. */
  public static Path file(Path folder, RowTable table) {
    return folder.resolve(table.word() + ".parquet");
  }

  /** Writes these tables; each file is there whole or not at all. */
  public void write(List<RowTable> tables, CsvTables.Work work) throws IOException {
    Path making = PrivateFiles.folders(folder.resolve(".making-tables"));
    CsvTables rows = CsvTables.plain(making);
    try {
      rows.write(tables, work);
      for (RowTable table : tables) {
        Path made = file(making, table);
        String from = "COPY (SELECT * FROM " + csv(rows.file(table), table) + ") TO ";
        run(from + text(made) + " (FORMAT parquet)");
        WholeFile.write(file(folder, table), out -> Files.copy(made, out));
      }
    } finally {
      for (RowTable table : tables) {
        Files.deleteIfExists(rows.file(table));
        Files.deleteIfExists(file(making, table));
      }
      Files.deleteIfExists(making);
    }
  }

  private void run(String sql) throws IOException {
    try (Statement statement = database.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** A table of ours in CSV, as the database reads it. */
  static String csv(Path file, RowTable table) {
    String columns =
        table.columns().stream()
            .map(column -> text(column.name()) + ": " + text(type(column)))
            .collect(Collectors.joining(", "));
    return "read_csv("
        + text(file)
        + ", auto_detect = false, header = true, delim = ',', quote = '\"', escape = '\"',"
        + " nullstr = '', columns = {"
        + columns
        + "})";
  }

  private static String type(RowColumn column) {
    return switch (column.kind()) {
      case TEXT -> "VARCHAR";
      case WHOLE -> "INTEGER";
      case NUMBER -> "DOUBLE";
    };
  }

  /** A text as SQL writes it. */
  static String text(Object words) {
    return "'" + words.toString().replace("'", "''") + "'";
  }
}
