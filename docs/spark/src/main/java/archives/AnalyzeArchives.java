package archives;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.storage.StorageLevel;
import steadyturn.analysis.rows.PathRows;
import steadyturn.analysis.rows.RowColumn;
import steadyturn.analysis.rows.RowTable;

/**
 * Analyses the lessons that a list names, on as many machines as there are, into Parquet. The work
 * on one path is a function of the files there alone, so a task that is lost is simply done again.
 * What cannot be read is a row of {@code recordings} with its failure; the job goes on.
 */
public final class AnalyzeArchives {

  private static final List<RowTable> TABLES =
      List.of(RowTable.RECORDINGS, RowTable.RESULTS, RowTable.KEY_POSITIONS);

  /** More parts than this only keep the driver busy. */
  private static final int MOST_PARTS = 10_000;

  private AnalyzeArchives() {}

  /** LIST: a file with a path a line (a lesson's folder or a motion table); OUT: a new folder. */
  public static void main(String[] args) throws IOException {
    if (args.length != 2) {
      throw new IllegalArgumentException("usage: AnalyzeArchives LIST OUT");
    }
    List<String> paths = Files.readAllLines(Path.of(args[0])).stream().filter(p -> !p.isBlank()).toList();
    try (SparkSession spark = SparkSession.builder().appName("analyze archives").getOrCreate()) {
      int parts = Math.max(1, Math.min(paths.size(), MOST_PARTS));
      JavaRDD<Row> rows =
          JavaSparkContext.fromSparkContext(spark.sparkContext())
              .parallelize(paths, parts)
              .flatMap(AnalyzeArchives::rows)
              .persist(StorageLevel.DISK_ONLY());
      for (RowTable table : TABLES) {
        JavaRDD<Row> its =
            rows.filter(row -> row.getInt(0) == table.ordinal()).map(row -> row.<Row>getAs(1));
        spark
            .createDataFrame(its, schema(table))
            .write()
            .parquet(args[1] + "/" + table.word() + ".parquet");
      }
      rows.unpersist();
    }
  }

  /** A table's number, and the row itself. */
  private static Iterator<Row> rows(String path) {
    List<Row> rows = new ArrayList<>();
    try {
      PathRows.withDefaults()
          .write(Path.of(path), (table, cells) -> rows.add(RowFactory.create(table.ordinal(), row(cells))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows.iterator();
  }

  private static Row row(Object... cells) {
    Object[] out = new Object[cells.length];
    for (int i = 0; i < cells.length; i++) {
      Object cell = cells[i] instanceof BigDecimal number ? (Object) number.doubleValue() : cells[i];
      out[i] = "".equals(cell) ? null : cell;
    }
    return RowFactory.create(out);
  }

  private static StructType schema(RowTable table) {
    StructType schema = new StructType();
    for (RowColumn column : table.columns()) {
      schema = schema.add(column.name(), type(column), true);
    }
    return schema;
  }

  private static DataType type(RowColumn column) {
    return switch (column.kind()) {
      case TEXT -> DataTypes.StringType;
      case WHOLE -> DataTypes.IntegerType;
      case NUMBER -> DataTypes.DoubleType;
    };
  }
}
