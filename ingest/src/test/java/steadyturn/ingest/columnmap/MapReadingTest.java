package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.TableShape;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Tables of a few lines with every unit and every axis told by the map. */
class MapReadingTest {

  @TempDir Path folder;

  private static String map(String time, String accel, String gyro) {
    return """
        [table]
        [time]
        %s
        [[unit]]
        point = "pelvis"
        accel = ["ax", "ay", "az"]
        accel_unit = "%s"
        gyro = ["gx", "gy", "gz"]
        gyro_unit = "%s"
        """
        .formatted(time, accel, gyro);
  }

  private Imported read(String map, String table) throws Exception {
    Path at = Files.writeString(folder.resolve("map.toml"), map);
    Path file = Files.writeString(folder.resolve("table.csv"), table, StandardCharsets.UTF_8);
    return ColumnMapImporter.readUnchecked(file, ColumnMap.read(at));
  }

  private static final String HEAD = "t,ax,ay,az,gx,gy,gz\n";
  private static final String TWO = HEAD + "10,1,2,3,4,5,6\n30,-1,-2,-3,-4,-5,-6\n";

  @ParameterizedTest(name = "{0}")
  @CsvSource({"s, 1", "ms, 1e-3", "us, 1e-6", "ns, 1e-9", "min, 60"})
  void aTimeColumnIsTakenIntoSeconds(String unit, double factor) throws Exception {
    // Given: 10 and 30 of a unit. Expect: so many seconds; the rate of one step, to 0.01 Hz.
    UnitStream unitRead =
        read(map("column = \"t\"\nunit = \"" + unit + "\"", "m/s^2", "rad/s"), TWO).units().get(0);
    assertThat(unitRead.timeColumnS())
        .containsExactly(new double[] {10 * factor, 30 * factor}, within(1e-14 * factor));
    assertThat(unitRead.facts().nominalRateHz())
        .isCloseTo(Math.max(0.01, 1 / (20 * factor)), within(1e-5 / factor));
  }

  @Test
  void ticksOfACounterAreWorthOneOverTheRate() throws Exception {
    UnitStream unit =
        read(map("column = \"t\"\nunit = \"sample\"\nrate_hz = 32768", "m/s^2", "rad/s"), TWO)
            .units()
            .get(0);
    assertThat(unit.timeColumnS())
        .containsExactly(new double[] {10 / 32768.0, 30 / 32768.0}, within(1e-15));
  }

  @ParameterizedTest(name = "{0}, {2}")
  @CsvSource({
    "m/s^2, 1, rad/s, 1",
    "g, 9.80665, deg/s, 0.017453292519943295",
    "mg, 0.00980665, mdeg/s, 1.7453292519943295e-5",
    "cm/s^2, 0.01, mrad/s, 0.001"
  })
  void valuesAreTakenIntoSiUnitsEachAxisInItsPlace(
      String accel, double toMps2, String gyro, double toRadPerS) throws Exception {
    UnitStream unit = read(map("column = \"t\"\nunit = \"ms\"", accel, gyro), TWO).units().get(0);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(unit.accelMps2(axis, 0))
          .isCloseTo((1 + axis) * toMps2, within(1e-14 * toMps2 * 10));
      assertThat(unit.gyroRadPerS(axis, 1))
          .isCloseTo(-(4 + axis) * toRadPerS, within(1e-14 * toRadPerS * 10));
    }
    assertThat(unit.facts().accelFullScaleMps2()).isInfinite();
    assertThat(unit.facts().gyroFullScaleRadPerS()).isInfinite();
    assertThat(unit.facts().calibrated()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n"})
  void lineEndsAByteOrderMarkAndAMissingLastLineEndMakeNoDifference(String end) throws Exception {
    String map = map("column = \"t\"\nunit = \"ms\"", "m/s^2", "rad/s");
    String table = TWO.replace("\n", end);
    for (String text :
        List.of(table, "\uFEFF" + table, table.substring(0, table.length() - end.length()))) {
      UnitStream unit = read(map, text).units().get(0);
      assertThat(unit.size()).isEqualTo(2);
      assertThat(unit.accelColumnMps2(0)).containsExactly(1, -1);
      assertThat(unit.gyroColumnRadPerS(2)).containsExactly(6, -6);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "127, 1.27, 0", // below half of it no wrap: time runs backwards
    "128, 1.28, 0",
    "126, 3.82, 1",
    "0, 2.56, 1"
  })
  void aCounterWrapsWhereItFallsByMoreThanHalf(int next, double expectedS, int wraps)
      throws Exception {
    // Given: a counter of 8 bits at 255, then another value. Expect: 256 more where it fell by
    // more than 128.
    String map =
        map("column = \"t\"\nunit = \"sample\"\nrate_hz = 100\nwraps_at = 256", "g", "deg/s");
    String table = HEAD + "255,1,2,3,4,5,6\n" + next + ",1,2,3,4,5,6\n";
    if (wraps == 0) {
      assertThatThrownBy(() -> read(map, table)).hasMessageContaining("time runs backwards");
    } else {
      assertThat(read(map, table).units().get(0).timeS(1)).isCloseTo(expectedS, within(1e-12));
    }
  }

  @Test
  void twoWrapsAreTwoAndALostCountIsNone() throws Exception {
    String map = map("column = \"t\"\nunit = \"sample\"\nrate_hz = 1\nwraps_at = 10", "g", "deg/s");
    String row = ",1,2,3,4,5,6\n";
    Imported read = read(map, HEAD + "8" + row + "n/a" + row + "1" + row + "9" + row + "2" + row);
    assertThat(read.units().get(0).timeColumnS())
        .containsExactly(new double[] {8, 11, 19, 22}, within(1e-12));
    assertThat(read.notices()).anyMatch(n -> n.contains("1 samples without a time"));
  }

  @Test
  void rowsAreCountedThatAreWholeWhereThereIsNoTime() throws Exception {
    String map = map("rate_hz = 50", "g", "deg/s");
    UnitStream unit = read(map, TWO + "\n7,8,9,1,2,3,4\n").units().get(0);
    assertThat(unit.timeColumnS()).containsExactly(new double[] {0, 0.02, 0.04}, within(1e-15));
  }

  @ParameterizedTest
  @CsvSource({
    "1, true", "-1, true", "+1, true", "1., true", ".5, true", "1e3, true", "-1.5E-7, true",
    "1e, false", "., false", "1.2.3, false", "'', false", "- 1, false", "0x1, false", "1f, false",
    "NaN, false", "1_0, false"
  })
  void onlyPlainNumbersAreNumbers(String cell, boolean isNumber) {
    MappedNumber dots = new MappedNumber(new TableShape(',', "", 0, 1, '.', List.of("lost")));
    assertThat(dots.isNumber(cell)).isEqualTo(isNumber);
    MappedNumber commas = new MappedNumber(new TableShape(';', "", 0, 1, ',', List.of("lost")));
    assertThat(commas.isNumber(cell.replace('.', ','))).isEqualTo(isNumber);
    assertThat(commas.isNumber("1.5")).isFalse();
    assertThat(commas.value("1,5")).isEqualTo(1.5);
    assertThat(dots.value("-2.25e1")).isEqualTo(-22.5);
    assertThat(dots.isMissing("")).isTrue();
    assertThat(dots.isMissing("lost")).isTrue();
    assertThat(dots.isMissing("0")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"a, a, 0, 1", "-a, a, 0, -1", "- a, a, 0, -1", "' a ', a, 0, 1"})
  void aColumnHasANameAndASign(String text, String name, int number, int sign) {
    assertThat(ColumnRef.named(text)).isEqualTo(new ColumnRef(name, number, sign));
  }

  @Test
  void aColumnMayBeANumberAndIsWrittenAsItWasGiven() {
    assertThat(ColumnRef.numbered(-3)).isEqualTo(new ColumnRef("", 3, -1));
    assertThat(ColumnRef.numbered(3).written()).isEqualTo("3");
    assertThat(ColumnRef.numbered(-3).written()).isEqualTo("-3");
    assertThat(ColumnRef.numbered(-3).shown()).isEqualTo("number 3");
    assertThat(ColumnRef.named("-a").written()).isEqualTo("\"-a\"");
    assertThat(ColumnRef.named("-a").shown()).isEqualTo("a");
    assertThat(ColumnRef.named("-a").turned(-1)).isEqualTo(ColumnRef.named("a"));
    assertThatThrownBy(() -> new ColumnRef("", 0, 1)).hasMessageContaining("name or a number");
    assertThatThrownBy(() -> new ColumnRef("a", 1, 1)).hasMessageContaining("name or a number");
  }

  @Test
  void aRecordingBeginsAtItsFirstUnitsFirstSampleWithItsMarks() throws Exception {
    UnitStream pelvis = read(map("column = \"t\"\nunit = \"s\"", "g", "deg/s"), TWO).units().get(0);
    Player player = Player.unmeasured("mika", Handedness.RIGHT);
    Recording recording =
        ColumnMapImporter.recording(
            "r", player, List.of(pelvis), List.of(new Mark(12.5, 2, "hit", "driver", "thin")));
    assertThat(recording.unit(BodyPoint.PELVIS).orElseThrow().timeColumnS()).containsExactly(0, 20);
    assertThat(recording.marks()).containsExactly(new Mark(2.5, 2, "hit", "driver", "thin"));
    assertThatThrownBy(
            () -> ColumnMapImporter.recording("r", player, List.of(pelvis, pelvis), List.of()))
        .hasMessageContaining("2 tables claim the body point pelvis");
    assertThatThrownBy(() -> ColumnMapImporter.recording("r", player, List.of(), List.of()))
        .hasMessageContaining("r has no samples");
  }
}
