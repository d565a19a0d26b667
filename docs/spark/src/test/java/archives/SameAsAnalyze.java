package archives;

import java.io.IOException;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;

/**
 * Holds what the job wrote against {@code analyze --format json} of the same lesson: every value, to
 * the last bit of its double, and nothing more; and what failed against what was broken on purpose.
 */
public final class SameAsAnalyze {

  private SameAsAnalyze() {}

  /** OUT of the job, the JSON, the number of lessons that are good copies and that are broken. */
  public static void main(String[] args) throws IOException {
    int good = Integer.parseInt(args[2]);
    int broken = Integer.parseInt(args[3]);
    try (SparkSession spark = SparkSession.builder().appName("same as analyze").getOrCreate()) {
      spark.read().parquet(args[0] + "/results.parquet").createOrReplaceTempView("results");
      spark.read().parquet(args[0] + "/recordings.parquet").createOrReplaceTempView("recordings");
      spark.read().option("multiLine", true).json(args[1]).createOrReplaceTempView("analyzed");
      Dataset<Row> expected =
          spark.sql(
              """
              select recording, swing.swing, m.id as measure, m.at as key_position,
                     double(m.value) as value, double(m.low) as low, double(m.high) as high,
                     m.unit, m.grade, m.reason
              from (select r.recording, explode(r.swings) as swing
                    from (select explode(recordings) as r from analyzed))
              lateral view explode(swing.measures) as m
              """);
      Dataset<Row> is =
          spark.sql(
              """
              select recording, bigint(swing) as swing, measure,
                     coalesce(key_position, '') as key_position, value, low, high, unit, grade,
                     coalesce(reason, '') as reason
              from results
              """);
      long values = expected.count();
      require(values > 1000, values + " values of analyze");
      require(is.count() == good * values, is.count() + " values of the job, not " + good * values);
      require(is.except(expected).isEmpty(), "the job has values that analyze has not");
      require(expected.except(is).isEmpty(), "analyze has values that the job has not");
      long failures =
          spark.sql("select * from recordings where failure is not null").count();
      require(failures == broken, failures + " failures, not " + broken);
      System.out.println("spark-test: PASSED, " + is.count() + " values, " + failures + " failures");
    }
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new IllegalStateException(otherwise);
    }
  }
}
