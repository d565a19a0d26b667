package steadyturn.cli.output.rows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.rows.RowTable;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.table.CellText;

/** Questions in SQL to the tables of a folder, each under its own name. */
public record TableQuery(Connection database) {

  /**
   * The tables of a folder: {@code results.parquet}, a file or a folder of parts as a cluster
   * leaves it, else {@code results.csv}, and so on.
   *
   * @throws IOException when there is none
   */
  public static TableQuery of(Connection database, Path folder) throws IOException {
    int found = 0;
    for (RowTable table : RowTable.values()) {
      Optional<String> source = source(folder, table);
      if (source.isPresent()) {
        found++;
        try (Statement statement = database.createStatement()) {
          statement.execute("CREATE VIEW " + table.word() + " AS SELECT * FROM " + source.get());
        } catch (SQLException e) {
          throw new IOException(e.getMessage(), e);
        }
      }
    }
    if (found == 0) {
      throw new IOException(Words.say("tables.none", folder));
    }
    return new TableQuery(database);
  }

  private static Optional<String> source(Path folder, RowTable table) {
    Path parquet = ParquetTables.file(folder, table);
    Path csv = CsvTables.into(folder).file(table);
    if (Files.isDirectory(parquet)) {
      return Optional.of("read_parquet(" + ParquetTables.text(parquet + "/*.parquet") + ")");
    }
    if (Files.exists(parquet)) {
      return Optional.of("read_parquet(" + ParquetTables.text(parquet) + ")");
    }
    return Files.exists(csv) ? Optional.of(ParquetTables.csv(csv, table)) : Optional.empty();
  }

  /** Prints the answer as CSV with a header; a statement without an answer prints nothing. */
  public void print(String sql, Appendable to) throws IOException {
    try (Statement statement = database.createStatement()) {
      if (!statement.execute(sql)) {
        return;
      }
      try (ResultSet rows = statement.getResultSet()) {
        print(rows, to);
      }
    } catch (SQLException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  private static void print(ResultSet rows, Appendable to) throws SQLException, IOException {
    ResultSetMetaData columns = rows.getMetaData();
    List<String> cells = new ArrayList<>();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      cells.add(columns.getColumnLabel(i));
    }
    CsvTables.FORMAT.printRecord(to, cells.toArray());
    while (rows.next()) {
      cells.clear();
      for (int i = 1; i <= columns.getColumnCount(); i++) {
        String cell = rows.getString(i);
        cells.add(cell == null ? "" : CellText.written(cell));
      }
      CsvTables.FORMAT.printRecord(to, cells.toArray());
    }
  }
}
