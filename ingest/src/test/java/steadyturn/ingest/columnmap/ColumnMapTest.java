package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Small invented tables in odd layouts. */
class ColumnMapTest {

  private static final String MAP =
      """
      [table]
      delimiter = "semicolon"
      comment = "#"
      skip_lines = 1
      header_lines = 2
      decimal = ","
      missing = ["lost"]

      [time]
      column = "count"
      unit = "sample"
      rate_hz = 200
      wraps_at = 256

      [[unit]]
      point = "lead_hand"
      serial = "0042"
      accel = ["-a3", "a1", "a2"]
      accel_unit = "g"
      accel_full_scale = 16
      gyro = [5, -6, 7]
      gyro_unit = "deg/s"
      gyro_full_scale = 2000
      """;

  private static final String TABLE =
      """
      Made on a rainy day
      # a comment; with; cells
      count;a1;a2;a3;r1;r2;r3
      ;g;g;g;deg/s;deg/s;deg/s
      254;0,5;0,25;-1;10;20;30

      255;0,5;lost;-1;10;20;30
      0;0,5;0,25;-1;"10";20;3e1
      # between samples
      3;0,5;0,25;-1;10;20;30
      """;

  @TempDir Path folder;

  private Path file(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw RecordingException.io(folder, e);
    }
  }

  private Imported imported(String map, String table) {
    return ColumnMapImporter.readUnchecked(
        file("table.csv", table), ColumnMap.read(file("map.toml", map)));
  }

  private String refusal(String map, String table) {
    RecordingException told =
        catchThrowableOfType(RecordingException.class, () -> imported(map, table));
    assertThat(told).as("a refusal").isNotNull();
    assertThat(told.getMessage()).hasLineCount(1);
    return String.valueOf(told.getMessage());
  }

  @Test
  void everyKeyOfAMapDoesWhatItSays() {
    // Given: skipped line, comments, two header lines, semicolons, decimal commas, a word for lost
    // values, a counter of 8 bits that starts again and then jumps by 3, axes in another order and
    // sign, columns by name and by number. Expect: 4 samples at 254, 255, 256 and 259 counts of
    // 5 ms; accel (1, 0.5, 0.25) g; rate (10, -20, 30) deg/s. Within 1e-12: a few roundings.
    Imported imported = imported(MAP, TABLE);
    UnitStream unit = imported.units().get(0);
    assertThat(unit.timeColumnS())
        .containsExactly(new double[] {1.27, 1.275, 1.28, 1.295}, within(1e-12));
    assertThat(unit.accelMps2(0, 0)).isCloseTo(9.80665, within(1e-12));
    assertThat(unit.accelMps2(1, 0)).isCloseTo(0.5 * 9.80665, within(1e-12));
    assertThat(unit.accelMps2(2, 0)).isCloseTo(0.25 * 9.80665, within(1e-12));
    assertThat(unit.accelMps2(2, 1)).isNaN();
    for (int i = 0; i < 4; i++) {
      assertThat(unit.gyroRadPerS(0, i)).isCloseTo(Math.toRadians(10), within(1e-12));
      assertThat(unit.gyroRadPerS(1, i)).isCloseTo(Math.toRadians(-20), within(1e-12));
      assertThat(unit.gyroRadPerS(2, i)).isCloseTo(Math.toRadians(30), within(1e-12));
    }
    assertThat(unit.facts().serialNumber()).isEqualTo("0042");
    assertThat(unit.facts().accelFullScaleMps2()).isCloseTo(16 * 9.80665, within(1e-9));
    assertThat(unit.facts().gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(2000), within(1e-9));
    assertThat(imported.notices())
        .containsExactly("table.csv: 1 lost values (empty cells or words of the map's list).");
  }

  @Test
  void theSameMapInJsonGivesTheSameSamples() {
    String json =
        """
        {"table": {"delimiter": ";", "comment": "#", "skip_lines": 1, "header_lines": 2,
                   "decimal": ",", "missing": ["lost"]},
         "time": {"column": "count", "unit": "sample", "rate_hz": 200, "wraps_at": 256},
         "unit": [{"point": "lead_hand", "accel": ["-a3", "a1", "a2"], "accel_unit": "g",
                   "gyro": [5, -6, 7], "gyro_unit": "°/s"}]}
        """;
    UnitStream fromToml = imported(MAP, TABLE).units().get(0);
    UnitStream fromJson =
        ColumnMapImporter.readUnchecked(
                file("table.csv", TABLE), ColumnMap.read(file("map.json", json)))
            .units()
            .get(0);
    assertThat(fromJson.timeColumnS()).isEqualTo(fromToml.timeColumnS());
    assertThat(fromJson.gyroColumnRadPerS(1)).isEqualTo(fromToml.gyroColumnRadPerS(1));
  }

  @Test
  void aTableInGzipIsReadAsItIs() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
      zip.write(TABLE.getBytes(StandardCharsets.UTF_8));
    }
    Path table = Files.write(folder.resolve("table.csv.gz"), bytes.toByteArray());
    assertThat(
            ColumnMapImporter.readUnchecked(table, ColumnMap.read(file("map.toml", MAP)))
                .units()
                .get(0)
                .size())
        .isEqualTo(4);
  }

  @Test
  void withoutATimeColumnTheRateCountsTheLines() {
    String map =
        """
        [table]
        header_lines = 0
        [time]
        rate_hz = 100
        [[unit]]
        point = "pelvis"
        accel = [1, 2, 3]
        accel_unit = "m/s^2"
        gyro = [4, 5, 6]
        gyro_unit = "rad/s"
        """;
    UnitStream unit = imported(map, "0,0,9.8,0,0,0\n0,0,9.8,0,0,0\n0,0,9.8,0,0,0\n").units().get(0);
    assertThat(unit.timeColumnS()).containsExactly(new double[] {0, 0.01, 0.02}, within(1e-15));
    assertThat(unit.facts().nominalRateHz()).isEqualTo(100);
  }

  @ParameterizedTest(name = "{0} -> {1}: {2}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "comment = |coment = |map.toml: table.coment: is no key of this section. Known: delimiter,",
        "\"lead_hand\"|\"left_knee\"|unit.point: \"left_knee\" is no body point known here. Use",
        "\"g\"|\"ft\"|map.toml: unit.accel_unit: \"ft\" is no unit known here. Use m/s^2, g or mg.",
        "[5, -6, 7]|[5, -6]|map.toml: unit.gyro: must be three columns, for x, y and z",
        "[5, -6, 7]|[5, -6, 5]|map.toml: unit.gyro: names a column twice",
        "rate_hz = 200||map.toml: time.rate_hz: is missing; a counter of samples needs it.",
        "[time]|[tme]|map.toml: tme: is no key of this section",
        "decimal = \",\"|decimal = \";\"|map.toml: table.decimal: must be \".\" or \",\"",
        "delimiter = \"semicolon\"|delimiter = \",\"|delimiter and decimal mark are both",
        "\"count\"|\"counter\"|has no column \"counter\". Its header names: count, a1, a2,",
        "[5, -6, 7]|[5, -6, 17]|line 5: 7 columns where the map names column 17",
        "missing = [\"lost\"]||line 7, column a2: \"lost\" is not a number. Add the word to"
            + " missing",
        "decimal = \",\"|decimal = \".\"|line 5, column a1: \"0,5\" is not a number. Set decimal",
        "wraps_at = 256||time runs backwards, from 1.275 s to 0.0 s. Set wraps_at in the map",
        "rate_hz = 200|rate_hz = = 200|map.toml, line 12: cannot be read as a column map"
      })
  void aMistakeInAMapIsToldInOneLine(String right, String wrong, String expected) {
    String map = MAP.replace(right, wrong == null ? "" : wrong);
    assertThat(map).isNotEqualTo(MAP);
    assertThat(refusal(map, TABLE)).contains(expected);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '~',
      value = {
        "3;0,5;0,25;-1;10;20;30!3;0,5;0,2!3!the last line is cut short",
        "255;0,5;lost!254;0,5;lost!3!1 samples that repeat the time of the one before",
        "255;0,5;lost!lost;0,5;lost!3!1 samples without a time left out"
      })
  void whatCanBeSavedIsSavedAndCounted(String right, String wrong, int samples, String expected) {
    Imported imported = imported(MAP, TABLE.replace(right, wrong));
    assertThat(imported.units().get(0).size()).isEqualTo(samples);
    assertThat(imported.notices()).anyMatch(n -> n.contains(expected));
  }

  @Test
  void anEmptyTableAndOneInUtf16AreToldAsSuch() throws IOException {
    assertThat(refusal(MAP, "")).contains("table.csv: is empty. Copy or export it again.");
    ColumnMap map = ColumnMap.read(file("map.toml", MAP));
    Path table = Files.write(folder.resolve("wide.csv"), TABLE.getBytes(StandardCharsets.UTF_16));
    RecordingException told =
        catchThrowableOfType(
            RecordingException.class, () -> ColumnMapImporter.readUnchecked(table, map));
    assertThat(told.getMessage()).contains("is written in UTF-16. Save it as UTF-8 text.");
  }

  @Test
  void unitsOfSeveralTablesBecomeOneRecordingThatBeginsWithThePelvis() {
    // Given: a hand table from 1.27 s on and a pelvis table of the same clock from 1.275 s on.
    // Expect: zero at the pelvis's first sample, the hand's at -5 ms; within 1e-12 s.
    UnitStream hand = imported(MAP, TABLE).units().get(0);
    UnitStream pelvis =
        ColumnMapImporter.readUnchecked(
                file("pelvis.csv", TABLE.replace("254;0,5;0,25;-1;10;20;30\n", "")),
                ColumnMap.read(file("map.toml", MAP)).at(BodyPoint.PELVIS))
            .units()
            .get(0);
    Recording recording =
        ColumnMapImporter.recording(
            "x", Player.unmeasured("mika", Handedness.LEFT), List.of(hand, pelvis), List.of());
    assertThat(recording.units().get(0).point()).isEqualTo(BodyPoint.PELVIS);
    assertThat(recording.units().get(0).timeS(0)).isZero();
    assertThat(recording.units().get(1).timeS(0)).isCloseTo(-0.005, within(1e-12));
  }

  @Test
  void everyBundledMapCanBeRead() {
    assertThat(ColumnMap.BUNDLED)
        .allSatisfy(name -> assertThat(ColumnMap.bundled(name).points()).isNotEmpty());
  }
}
