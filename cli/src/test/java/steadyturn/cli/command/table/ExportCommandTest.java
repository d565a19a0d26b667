package steadyturn.cli.command.table;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.cli.CommandLineRun;

/**
 * Given in every test: the tables of three swings of the bundled lesson, and what {@code analyze}
 * says of it.
 */
final class ExportCommandTest {

  private static final Path HOME = CommandLineRun.projectFolder();
  private static final Path PAGE = HOME.resolve("docs/how-to/tables-in-python-and-r.md");

  @TempDir private static Path folder;
  private static Path tables = folder;

  private static JsonNode analyzed = JsonNodeFactory.instance.missingNode();

  @BeforeAll
  static void export() throws IOException {
    String lesson = ShortLesson.into(folder.resolve("lesson")).toString();
    tables = folder.resolve("tables");
    CommandLineRun json = CommandLineRun.of("analyze", lesson, "--format", "json");
    analyzed =
        JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build()
            .readTree(json.out());
    CommandLineRun run = CommandLineRun.of("export", lesson, "--out", tables.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out().lines()).hasSize(5).allMatch(file -> Files.exists(Path.of(file)));
  }

  private static List<CSVRecord> rows(String table) throws IOException {
    try (CSVParser parser =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(Files.newBufferedReader(tables.resolve(table + ".csv")))) {
      return parser.getRecords();
    }
  }

  /** A number as its digits, nothing for null. */
  private static String digits(JsonNode number) {
    return number.isNull() ? "" : number.decimalValue().toPlainString();
  }

  @Test
  void everyValueIsThatOfAnalyzeToTheLastDigit() throws IOException {
    // Expect: one row a value in the same order, the same digits (no tolerance), empty where JSON
    // has null, the same grade and reason.
    List<List<String>> expected = new ArrayList<>();
    for (JsonNode recording : analyzed.get("recordings")) {
      for (JsonNode swing : recording.get("swings")) {
        for (JsonNode value : swing.get("measures")) {
          expected.add(
              List.of(
                  recording.get("recording").asText(),
                  recording.get("player").get("id").asText(),
                  swing.get("swing").asText(),
                  swing.get("club").asText(),
                  swing.get("kind").asText(),
                  value.get("id").asText(),
                  value.get("at").asText(),
                  digits(value.get("value")),
                  digits(value.get("low")),
                  digits(value.get("high")),
                  value.get("unit").asText(),
                  value.get("grade").asText(),
                  value.get("reason").asText()));
        }
      }
    }
    assertThat(expected).hasSizeGreaterThan(300).anyMatch(row -> row.contains("withheld"));
    assertThat(
            cells(
                "results",
                "recording,player,swing,club,kind,measure,key_position,value,low,high,unit,grade,reason"))
        .isEqualTo(expected);
  }

  @Test
  void everyKeyPositionIsThatOfAnalyzeToTheLastDigit() throws IOException {
    List<List<String>> expected = new ArrayList<>();
    for (JsonNode swing : analyzed.get("recordings").get(0).get("swings")) {
      for (JsonNode event : swing.get("events")) {
        expected.add(
            List.of(
                swing.get("swing").asText(),
                event.get("name").asText(),
                digits(event.get("timeS")),
                digits(event.get("sdS")),
                event.get("grade").asText(),
                event.get("reason").asText()));
      }
    }
    assertThat(cells("key_positions", "swing,key_position,time_s,sd_s,grade,reason"))
        .isEqualTo(expected);
  }

  private static List<List<String>> cells(String table, String columns) throws IOException {
    List<String> names = List.of(columns.split(",", -1));
    return rows(table).stream().map(row -> names.stream().map(row::get).toList()).toList();
  }

  @Test
  void everyReasonHasItsSentenceBesideTheTables() throws IOException {
    // Expect: code and arguments of every value and key position are a row of reasons.csv.
    List<List<String>> said = cells("reasons", "reason,reason_args");
    for (String table : List.of("results", "key_positions")) {
      assertThat(cells(table, "reason,reason_args"))
          .allMatch(reason -> reason.get(0).isEmpty() || said.contains(reason));
    }
    assertThat(cells("reasons", "why")).isNotEmpty().noneMatch(why -> why.get(0).isBlank());
  }

  @Test
  void aCurveGoesThroughTheValueAtItsKeyPosition() throws IOException {
    // Given: turn at the top, and the curve's instants within 10 ms of it. Expect: some within
    // 1 deg: a backswing ends at rest, and 10 ms at 100 deg/s are 1 deg.
    Map<String, Double> topS = new HashMap<>();
    rows("key_positions").stream()
        .filter(row -> row.get("key_position").equals("top"))
        .forEach(row -> topS.put(row.get("swing"), number(row, "time_s")));
    List<CSVRecord> curves =
        rows("curves").stream()
            .filter(row -> !row.get("pelvis_turn_deg").isEmpty())
            .filter(
                row ->
                    Math.abs(
                            number(row, "time_s") - topS.getOrDefault(row.get("swing"), Double.NaN))
                        < 0.01)
            .toList();
    for (CSVRecord value : rows("results")) {
      if (value.get("measure").equals("pelvis.turn") && value.get("key_position").equals("top")) {
        assertThat(curves)
            .filteredOn(row -> row.get("swing").equals(value.get("swing")))
            .anyMatch(row -> Math.abs(number(row, "pelvis_turn_deg") - number(value, "value")) < 1);
      }
    }
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void orientationsAreUnitQuaternionsOfEveryUnitInEverySwing() throws IOException {
    // Within 1e-8 of norm 1: nine decimals, four numbers.
    for (CSVRecord row : rows("orientations")) {
      double square = 0;
      for (String part : List.of("w", "x", "y", "z")) {
        square += number(row, "q_earth_unit_" + part) * number(row, "q_earth_unit_" + part);
      }
      assertThat(Math.sqrt(square)).isCloseTo(1, within(1e-8));
    }
    assertThat(rows("orientations").stream().map(row -> row.get("swing") + row.get("point")))
        .contains("1pelvis", "3pelvis", "3lead_forearm", "3lead_hand");
  }

  @Test
  void thePageOfTheTablesIsTheDictionaryAndTheDictionaryIsEveryColumn() throws IOException {
    String page = Files.readString(HOME.resolve("docs/tables.md"));
    String table = "";
    List<String> headers = new ArrayList<>();
    for (CSVRecord row : rows("dictionary")) {
      if (!row.get("table").equals(table)) {
        table = row.get("table");
        assertThat(page).contains("\n## " + table + "\n");
      }
      String section = page.substring(page.indexOf("\n## " + table + "\n"));
      String line =
          "| `%s` | %s | %s | %s |"
              .formatted(row.get(1), row.get(2), row.get(3), row.get(4))
              .replace("|  |", "| |");
      assertThat(section.split("\n## ", -1)[1]).contains(line);
      headers.add(table + " " + row.get("column"));
    }
    for (String name :
        List.of("recordings", "results", "key_positions", "curves", "orientations")) {
      String header = Files.readAllLines(tables.resolve(name + ".csv")).get(0);
      for (String column : header.split(",", -1)) {
        assertThat(headers).contains(name + " " + column);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"python,python3,''", "r,Rscript,--vanilla"})
  void theExampleOfThePagePrintsTheNumbersOfAnalyze(
      String language, String program, String option, @TempDir Path place)
      throws IOException, InterruptedException {
    // Given: the code of the page. Expect: the same digits as in the JSON, a line a swing, then a
    // line a club, its mean within half of the last decimal.
    assumeThere(program);
    String page = Files.readString(PAGE);
    Path code = Files.writeString(place.resolve("example"), block(page, language));
    List<String> command = new ArrayList<>(List.of(program, option, code.toString()));
    command.removeIf(String::isEmpty);
    command.add(tables.toString());
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(printed).isZero();
    List<String> expected = new ArrayList<>();
    List<Double> turnsDeg = new ArrayList<>();
    for (JsonNode swing : analyzed.get("recordings").get(0).get("swings")) {
      for (JsonNode value : swing.get("measures")) {
        if (value.get("id").asText().equals("pelvis.turn")
            && value.get("at").asText().equals("top")) {
          turnsDeg.add(value.get("value").doubleValue());
          expected.add(
              "swing %s, %s: %s deg (%s to %s)"
                  .formatted(
                      swing.get("swing").asText(),
                      swing.get("club").asText(),
                      digits(value.get("value")),
                      digits(value.get("low")),
                      digits(value.get("high"))));
        }
      }
    }
    assertThat(printed.lines()).startsWith(expected.toArray(String[]::new)).hasSize(4);
    Matcher mean = Pattern.compile("\n7-iron: 3 swings, mean (\\S+) deg\n").matcher(printed);
    assertThat(mean.find()).as(printed).isTrue();
    assertThat(Double.parseDouble(mean.group(1)))
        .isCloseTo(turnsDeg.stream().mapToDouble(t -> t).average().orElseThrow(), within(0.00501));
  }

  private static String block(String page, String language) {
    Matcher block =
        Pattern.compile("\n```" + language + "\n(.*?)```", Pattern.DOTALL).matcher(page);
    assertThat(block.find()).isTrue();
    return block.group(1);
  }

  /** Left out where the language is not installed; {@code ./check} installs it. */
  private static void assumeThere(String program) {
    boolean there =
        Stream.of(Objects.requireNonNull(System.getenv("PATH")).split(":", -1))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    if (!there && "1".equals(System.getenv("STEADYTURN_CHECK"))) {
      throw new AssertionError(program + " is not installed");
    }
    Assumptions.assumeTrue(there, program + " is not installed");
  }
}
