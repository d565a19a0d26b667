package steadyturn.cli.command.table;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;

/**
 * Given: DuckDB's driver (an outside implementation of CSV and Parquet) as a plug-in. It is on the
 * class path of tests but for the inner loop (-Dquick), where these are left out.
 */
final class ParquetExportTest {

  @TempDir private Path folder;

  private String lesson() throws IOException {
    return ShortLesson.into(folder.resolve("lesson")).toString();
  }

  private static Path driver() {
    String path = System.getProperty("java.class.path");
    List<Path> jars =
        Stream.of(path.split(":", -1))
            .filter(p -> p.contains("duckdb_jdbc"))
            .map(Path::of)
            .toList();
    if (jars.isEmpty() && "1".equals(System.getenv("STEADYTURN_CHECK"))) {
      throw new AssertionError("DuckDB is not on the class path");
    }
    Assumptions.assumeFalse(jars.isEmpty(), "DuckDB is not on the class path");
    return jars.get(0);
  }

  private Path plugins() throws IOException {
    Path plugins = Files.createDirectories(folder.resolve("plugins"));
    Path jar = driver();
    Files.createSymbolicLink(
        plugins.resolve(String.valueOf(jar.getFileName())), jar.toAbsolutePath());
    return plugins;
  }

  @Test
  void parquetReadAgainHoldsTheNumbersOfAnalyze() throws IOException {
    // Given: three swings. Expect: value, low and high of each row are the very doubles of
    // the JSON (no tolerance), NULL where it has null; whole numbers and texts likewise.
    String plugins = plugins().toString();
    String tables = folder.resolve("tables").toString();
    String lesson = lesson();
    CommandLineRun made =
        CommandLineRun.of(
            "export",
            lesson,
            "--format",
            "parquet",
            "--tables",
            "recordings,results",
            "--out",
            tables,
            "--plugins",
            plugins);
    assertThat(made.exitCode()).as(made.err()).isZero();
    assertThat(made.out().lines()).allMatch(file -> file.endsWith(".parquet"));
    String sql =
        "select swing, club, measure, key_position, value, low, high, grade, reason from results";
    CommandLineRun asked = CommandLineRun.of("query", sql, tables, "--plugins", plugins);
    assertThat(asked.exitCode()).as(asked.err()).isZero();
    List<CSVRecord> rows = CSVFormat.RFC4180.parse(new StringReader(asked.out())).getRecords();
    List<List<Object>> is = new ArrayList<>();
    for (CSVRecord row : rows.subList(1, rows.size())) {
      List<Object> cells = new ArrayList<>(row.toList());
      for (int i = 4; i < 7; i++) {
        cells.set(i, row.get(i).isEmpty() ? "" : Double.valueOf(row.get(i)));
      }
      is.add(cells);
    }
    assertThat(is).isEqualTo(expected(lesson));
  }

  private static List<List<Object>> expected(String lesson) throws IOException {
    CommandLineRun json = CommandLineRun.of("analyze", lesson, "--format", "json");
    List<List<Object>> expected = new ArrayList<>();
    for (JsonNode swing :
        new ObjectMapper().readTree(json.out()).get("recordings").get(0).get("swings")) {
      for (JsonNode value : swing.get("measures")) {
        List<Object> cells = new ArrayList<>();
        cells.add(swing.get("swing").asText());
        cells.add(swing.get("club").asText());
        cells.add(value.get("id").asText());
        cells.add(value.get("at").asText());
        for (String number : List.of("value", "low", "high")) {
          cells.add(value.get(number).isNull() ? "" : value.get(number).doubleValue());
        }
        cells.add(value.get("grade").asText());
        cells.add(value.get("reason").asText());
        expected.add(cells);
      }
    }
    return expected;
  }

  @Test
  void theSentenceWithoutADriverNamesTheVersionThatIsTested() throws IOException {
    // Given: an empty folder. Expect: exit code 1 and one line that says how to fetch this very
    // jar.
    String version =
        String.valueOf(driver().getFileName()).replaceAll("duckdb_jdbc-(.*)\\.jar", "$1");
    CommandLineRun run =
        CommandLineRun.of(
            "export",
            lesson(),
            "--format",
            "parquet",
            "--plugins",
            folder.toString(),
            "--out",
            folder.resolve("none").toString());
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains("org.duckdb:duckdb_jdbc:" + version + " ");
    assertThat(folder.resolve("none")).doesNotExist();
  }

  @Test
  void aDriverAmongThePluginsIsNoBrokenAdapter() throws IOException {
    CommandLineRun run =
        CommandLineRun.of("units", "--plugins", plugins().toString(), "--seconds", "0");
    assertThat(run.err()).doesNotContain("duckdb");
  }
}
