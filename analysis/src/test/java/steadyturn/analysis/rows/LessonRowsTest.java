package steadyturn.analysis.rows;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.analysis.swing.EventTime;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.sample.UnitStream;

/**
 * Given: the bundled lesson. Expect: every number of its result stands in the row and under the
 * column that its name says, rounded. Within half a unit of the last digit.
 */
final class LessonRowsTest {

  private static final double OF_VALUE = 0.000501;
  private static final double OF_TIME = 0.00000501;

  private static final Map<RowTable, List<Map<String, Object>>> ROWS =
      new EnumMap<>(RowTable.class);
  private static final List<LessonResult> RESULTS = new ArrayList<>();
  private static Session lesson;

  private static Object at(Map<String, Object> row, String column) {
    return Objects.requireNonNull(row.get(column), column);
  }

  private static List<Map<String, Object>> rows(RowTable table) {
    return ROWS.getOrDefault(table, List.of());
  }

  /** Fails where anything is told. */
  private static final class Quiet implements ReadingWatch {

    @Override
    public boolean tried(Attempt attempt) {
      try {
        attempt.run();
        return true;
      } catch (Exception e) {
        throw new AssertionError(e);
      }
    }

    @Override
    public void failed(Exception failure) {
      throw new AssertionError(failure);
    }

    @Override
    public void warn(String sentence) {}
  }

  private static RowSink into(Map<RowTable, List<Map<String, Object>>> rows) {
    return (table, cells) -> {
      assertThat(cells).as(table.word()).hasSameSizeAs(table.columns());
      Map<String, Object> row = new TreeMap<>();
      IntStream.range(0, cells.length)
          .forEach(i -> row.put(table.columns().get(i).name(), cells[i]));
      rows.computeIfAbsent(table, t -> new ArrayList<>()).add(row);
    };
  }

  @BeforeAll
  static void analyse() throws IOException {
    lesson = Archive.open(Path.of("../sample-recordings")).sessions().get(0);
    AnalysisSettings settings = AnalysisSettings.defaults();
    RESULTS.addAll(new LessonRows("here", settings, into(ROWS)).write(lesson, new Quiet()));
    OrientationRows.write("here", lesson.runs().get(0), RESULTS.get(0), into(ROWS));
  }

  private static List<Map<String, Object>> rows(RowTable table, LessonResult result, int swing) {
    return rows(table).stream()
        .filter(r -> at(r, "archive").equals("here"))
        .filter(r -> at(r, "recording").equals(result.recording()))
        .filter(r -> at(r, "swing").equals(swing))
        .toList();
  }

  private static void assertNumber(Object cell, double number, double half) {
    if (Double.isFinite(number)) {
      assertThat(((BigDecimal) cell).doubleValue()).isCloseTo(number, within(half));
    } else {
      assertThat(cell).isEqualTo("");
    }
  }

  @Test
  void aRecordingHasItsRow() {
    assertThat(rows(RowTable.RECORDINGS)).hasSameSizeAs(RESULTS);
    Map<String, Object> row = rows(RowTable.RECORDINGS).get(0);
    LessonResult result = RESULTS.get(0);
    assertThat(row)
        .containsEntry("player", "mika")
        .containsEntry("lesson", lesson.lesson())
        .containsEntry("handed", result.player().handed().word())
        .containsEntry("aim", result.aim())
        .containsEntry("swings", result.swings().size())
        .containsEntry("failure", "");
    assertThat(at(row, "notices").toString().split(",", -1))
        .hasSizeLessThanOrEqualTo(result.notices().size());
    assertThat(at(row, "start").toString()).startsWith("20");
    assertThat(at(row, "settings").toString()).isNotEmpty();
    assertThat(at(row, "program_version").toString()).isNotEmpty();
  }

  @Test
  void everyValueOfASwingHasItsRow() {
    for (LessonResult result : RESULTS) {
      for (SwingResult swing : result.swings()) {
        List<Map<String, Object>> rows = rows(RowTable.RESULTS, result, swing.number());
        assertThat(rows).hasSameSizeAs(swing.measures());
        for (int i = 0; i < rows.size(); i++) {
          MeasureValue value = swing.measures().get(i);
          Map<String, Object> row = rows.get(i);
          assertThat(row)
              .containsEntry("club", swing.club())
              .containsEntry("kind", swing.kind().word())
              .containsEntry("flags", String.join(",", swing.flags()))
              .containsEntry("measure", value.measure().id())
              .containsEntry("key_position", value.at())
              .containsEntry("unit", value.measure().unit())
              .containsEntry("grade", value.grade().word())
              .containsEntry("reason", value.why().code().word())
              .containsEntry("reason_args", LessonRows.args(value.why()));
          assertNumber(at(row, "value"), value.value(), OF_VALUE);
          assertNumber(at(row, "low"), value.low(), OF_VALUE);
          assertNumber(at(row, "high"), value.high(), OF_VALUE);
        }
      }
    }
  }

  @Test
  void everyKeyPositionHasItsRow() {
    for (LessonResult result : RESULTS) {
      for (SwingResult swing : result.swings()) {
        List<Map<String, Object>> rows = rows(RowTable.KEY_POSITIONS, result, swing.number());
        assertThat(rows).hasSameSizeAs(swing.events());
        for (int i = 0; i < rows.size(); i++) {
          EventTime event = swing.events().get(i);
          assertThat(rows.get(i))
              .containsEntry("key_position", event.event().word())
              .containsEntry("grade", event.grade().word())
              .containsEntry("reason", event.why().code().word());
          assertNumber(at(rows.get(i), "time_s"), event.timeS(), OF_TIME);
          assertNumber(at(rows.get(i), "sd_s"), event.sdS(), OF_TIME);
        }
      }
    }
  }

  @Test
  void everyInstantOfACurveStandsUnderItsQuantity() {
    LessonResult result = RESULTS.get(0);
    SwingResult swing = result.swings().get(0);
    NavigableMap<Double, Map<String, Object>> byTime = new TreeMap<>();
    rows(RowTable.CURVES, result, swing.number())
        .forEach(r -> byTime.put(((BigDecimal) at(r, "time_s")).doubleValue(), r));
    assertThat(swing.curves()).hasSizeGreaterThanOrEqualTo(8);
    int filled = 0;
    for (Curve curve : swing.curves()) {
      String name = curve.id().replace('.', '_');
      for (int i = 0; i < curve.timeS().size(); i++) {
        double timeS = curve.timeS().get(i);
        Map<String, Object> row = byTime.ceilingEntry(timeS - OF_TIME).getValue();
        assertNumber(at(row, "time_s"), timeS, OF_TIME);
        assertNumber(at(row, name + "_" + curve.unit()), curve.value().get(i), OF_VALUE);
        assertNumber(at(row, name + "_sd_" + curve.unit()), curve.sd().get(i), OF_VALUE);
        filled += Double.isFinite(curve.value().get(i)) ? 1 : 0;
      }
    }
    assertThat(
            byTime.values().stream()
                .flatMap(r -> r.entrySet().stream())
                .filter(e -> !e.getKey().contains("_sd_") && !e.getKey().equals("time_s"))
                .filter(e -> e.getValue() instanceof BigDecimal)
                .count())
        .as("nothing stands where no quantity is")
        .isEqualTo(filled);
  }

  @Test
  void aTurnedUnitsForceAtRestPointsUp() {
    // Given: the unit at the pelvis, which hardly accelerates in the quarter second after the
    // takeaway. Expect: its specific force, turned into earth axes by the row, is gravity's
    // reaction, 9.81 m/s^2 upwards. Within 1.5: what a pelvis that sets off adds.
    LessonResult result = RESULTS.get(0);
    SwingResult swing = result.swings().get(0);
    UnitStream pelvis = OrientationRows.units(lesson.runs().get(0)).iterator().next();
    List<Map<String, Object>> rows =
        rows(RowTable.ORIENTATIONS, result, swing.number()).stream()
            .filter(r -> at(r, "point").equals(pelvis.point().trackedPoint()))
            .toList();
    double firstS = ((BigDecimal) at(rows.get(0), "time_s")).doubleValue();
    double[] timesS = swing.events().stream().mapToDouble(EventTime::timeS).sorted().toArray();
    assertThat(firstS).isBetween(timesS[0] - OF_TIME, timesS[0] + 0.02);
    assertThat(((BigDecimal) at(rows.get(rows.size() - 1), "time_s")).doubleValue())
        .isBetween(timesS[timesS.length - 1] - 0.02, timesS[timesS.length - 1] + OF_TIME);
    int at = 0;
    while (pelvis.timeS(at) < firstS - OF_TIME) {
      at++;
    }
    double[] sum = new double[3];
    int n = 20;
    for (int i = 0; i < n; i++) {
      double[] up = turned(rows.get(i), pelvis, at + i);
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += up[axis] / n;
      }
    }
    assertThat(sum[0]).isCloseTo(0, within(1.5));
    assertThat(sum[1]).isCloseTo(0, within(1.5));
    assertThat(sum[2]).isCloseTo(9.81, within(1.5));
    assertThat(((BigDecimal) at(rows.get(0), "inclination_sigma_deg")).doubleValue())
        .isBetween(0.01, 3.0);
    assertThat(((BigDecimal) at(rows.get(0), "heading_sigma_deg")).doubleValue()).isPositive();
  }

  /** v + 2 w (u x v) + 2 u x (u x v), with the quaternion's w and vector u. */
  private static double[] turned(Map<String, Object> row, UnitStream unit, int i) {
    double w = cell(row, "w");
    double[] u = {cell(row, "x"), cell(row, "y"), cell(row, "z")};
    assertThat(w * w + u[0] * u[0] + u[1] * u[1] + u[2] * u[2]).isCloseTo(1, within(1e-7));
    double[] v = {unit.accelMps2(0, i), unit.accelMps2(1, i), unit.accelMps2(2, i)};
    double[] across = cross(u, v);
    double[] twice = cross(u, across);
    return IntStream.range(0, 3)
        .mapToDouble(k -> v[k] + 2 * w * across[k] + 2 * twice[k])
        .toArray();
  }

  private static double cell(Map<String, Object> row, String axis) {
    return ((BigDecimal) at(row, "q_earth_unit_" + axis)).doubleValue();
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  @Test
  void whatCannotBeOpenedIsARowThatSaysWhy(@TempDir Path folder) throws IOException {
    // Given: a path where nothing lies, and a file that is no motion table
    Files.writeString(folder.resolve("words.txt"), "no table");
    for (Path path : List.of(folder.resolve("none"), folder.resolve("words.txt"))) {
      Map<RowTable, List<Map<String, Object>>> rows = new EnumMap<>(RowTable.class);
      PathRows.withDefaults().write(path, into(rows));
      assertThat(rows).containsOnlyKeys(RowTable.RECORDINGS);
      assertThat(rows.getOrDefault(RowTable.RECORDINGS, List.of())).hasSize(1);
      Map<String, Object> row = rows.getOrDefault(RowTable.RECORDINGS, List.of()).get(0);
      assertThat(row).containsEntry("archive", path.toString()).containsEntry("recording", "");
      assertThat(at(row, "failure").toString()).contains(path.getFileName().toString());
      assertThat(at(row, "settings").toString()).isNotEmpty();
    }
  }
}
