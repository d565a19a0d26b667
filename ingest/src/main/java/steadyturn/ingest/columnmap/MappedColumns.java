package steadyturn.ingest.columnmap;

import java.util.Arrays;

/** Columns that grow as rows are read. */
final class MappedColumns {

  private final double[][] columns;
  private int size;

  MappedColumns(int count) {
    columns = new double[count][1024];
  }

  void append(double[] row) {
    if (size == columns[0].length) {
      for (int i = 0; i < columns.length; i++) {
        columns[i] = Arrays.copyOf(columns[i], 2 * size);
      }
    }
    for (int i = 0; i < columns.length; i++) {
      columns[i][size] = row[i];
    }
    size++;
  }

  int size() {
    return size;
  }

  double[] column(int index) {
    return Arrays.copyOf(columns[index], size);
  }
}
