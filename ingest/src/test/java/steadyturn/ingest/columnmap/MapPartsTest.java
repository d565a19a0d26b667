package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** Tables whose units, sensors or times do not stand beside one another in one row. */
class MapPartsTest {

  @TempDir Path folder;

  private void file(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private Imported read(String map, String table) throws IOException {
    file("map.toml", map);
    return ColumnMapImporter.readUnchecked(
        folder.resolve(table), ColumnMap.read(folder.resolve("map.toml")));
  }

  private String refusal(String map, String table) {
    RecordingException told =
        catchThrowableOfType(RecordingException.class, () -> read(map, table));
    assertThat(told).as("a refusal").isNotNull();
    assertThat(told.getMessage()).hasLineCount(1);
    return String.valueOf(told.getMessage());
  }

  private static String unit(String point, String more) {
    return """
        [[unit]]
        point = "%s"
        accel = ["ax", "ay", "az"]
        accel_unit = "m/s^2"
        gyro = ["gx", "gy", "gz"]
        gyro_unit = "rad/s"
        %s
        """
        .formatted(point, more);
  }

  private static final String SECONDS =
      """
      [table]
      [time]
      column = "t"
      unit = "s"
      """;

  @Test
  void sensorsInFilesOfTheirOwnAreTakenAtTheTimesOfTheGyroscope() throws IOException {
    // Given: accelerations 0, 2, 4 at 0, 2, 4 s without gravity, gravity 10 throughout, with a gap
    // from 4 to 20 s; rates at 1, 3, 12 and 30 s. Expect: straight lines between neighbours, so 11
    // and 13 m/s^2; nothing across the gap; nothing where the other sensor is over.
    file("a.csv", "t,x,y,z\n0,0,0,0\n2,2,0,0\n4,4,0,0\n20,4,0,0\n22,4,0,0\n");
    file("v.csv", "t,x,y,z\n0,10,0,0\n2,10,0,0\n4,10,0,0\n20,10,0,0\n22,10,0,0\n");
    file("g.csv", "t,x,y,z\n1,7,0,0\n3,8,0,0\n12,9,0,0\n30,9,0,0\n");
    String part =
        """
        [[file]]
        name = "%s"
        [[file.unit]]
        point = "pelvis"
        %s = ["x", "y", "z"]
        %s
        """;
    String map =
        SECONDS
            + part.formatted("a.csv", "accel", "accel_unit = \"m/s^2\"\naccel_full_scale = 78")
            + part.formatted("v.csv", "gravity", "accel_unit = \"m/s^2\"")
            + part.formatted("g.csv", "gyro", "gyro_unit = \"rad/s\"\ngyro_full_scale = 35");
    UnitStream unit = read(map, ".").units().get(0);
    assertThat(unit.timeColumnS()).containsExactly(1, 3, 12);
    assertThat(unit.accelMps2(0, 0)).isCloseTo(11, within(1e-12));
    assertThat(unit.accelMps2(0, 1)).isCloseTo(13, within(1e-12));
    assertThat(unit.accelMps2(0, 2)).isNaN();
    assertThat(unit.gyroColumnRadPerS(0)).containsExactly(7, 8, 9);
    assertThat(unit.facts().accelFullScaleMps2()).isEqualTo(78);
    assertThat(unit.facts().gyroFullScaleRadPerS()).isEqualTo(35);
    assertThat(refusal(map, "a.csv")).contains("name the folder that holds a.csv");
    Files.delete(folder.resolve("v.csv"));
    assertThat(refusal(map, ".")).contains("v.csv");
  }

  @Test
  void aUnitNeedsBothSensorsOnce() {
    String half =
        SECONDS
            + "[[file]]\nname = \"a.csv\"\n[[file.unit]]\npoint = \"pelvis\"\n"
            + "accel = [1, 2, 3]\naccel_unit = \"g\"\n";
    assertThat(refusal(half, ".")).contains("gyro: is missing for pelvis");
    assertThat(refusal(half + half.substring(half.indexOf("[[file]]")), "."))
        .contains("two units claim the same body point (accel)");
  }

  @Test
  void rowsAreToldApartByAWord() throws IOException {
    // Given: two units in turns, which agree in time. Expect: each its own rows.
    file(
        "t.csv",
        """
        who,t,ax,ay,az,gx,gy,gz
        b,1,1,0,0,0,0,0
        a,1,2,0,0,0,0,0
        b,2,3,0,0,0,0,0
        a,2,4,0,0,0,0,0
        """);
    String where = "where = { column = \"who\", is = \"%s\" }";
    String map =
        SECONDS + unit("pelvis", where.formatted("a")) + unit("lead_hand", where.formatted("b"));
    List<UnitStream> units = read(map, "t.csv").units();
    assertThat(units.get(0).accelColumnMps2(0)).containsExactly(2, 4);
    assertThat(units.get(1).accelColumnMps2(0)).containsExactly(1, 3);
    assertThat(units.get(1).point()).isEqualTo(BodyPoint.LEAD_HAND);
    assertThat(refusal(SECONDS + unit("pelvis", where.formatted("c")), "t.csv"))
        .contains("no row with \"c\" in who");
  }

  @Test
  void sensorsInTurnsInOneTableAreToldApartToo() throws IOException {
    file("t.csv", "kind,t,x,y,z\nA,1,1,2,3\nG,1,4,5,6\nA,2,1,2,3\nG,2,4,5,6\n");
    String part =
        """
        [[file]]
        name = "t.csv"
        [[file.unit]]
        point = "pelvis"
        where = { column = "kind", is = "%s" }
        %s
        """;
    String map =
        SECONDS
            + part.formatted("A", "accel = [\"x\", \"y\", \"z\"]\naccel_unit = \"m/s^2\"")
            + part.formatted("G", "gyro = [\"x\", \"y\", \"z\"]\ngyro_unit = \"rad/s\"");
    UnitStream unit = read(map, ".").units().get(0);
    assertThat(unit.accelColumnMps2(2)).containsExactly(3, 3);
    assertThat(unit.gyroColumnRadPerS(2)).containsExactly(6, 6);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "2026-01-31T16:30:00.25, , 1769877000.25",
    "2026-01-31 16:30:00.25, , 1769877000.25",
    "2026-01-31T16:30:00.2500001Z, , 1769877000.2500001",
    "2026-01-31T17:30:00.25+01:00, , 1769877000.25",
    "16:30:00.25, , 59400.25",
    "31.01.2026 16:30:00.25, dd.MM.yyyy HH:mm:ss.SS, 1769877000.25",
    "163000, HHmmss, 59400"
  })
  void datesAndTimesAsTextBecomeSeconds(String cell, String format, double seconds)
      throws IOException {
    // Given: 2026-01-31 16:30:00 UTC, 1769877000 s since 1970 (by the shell's date -u +%s).
    // Within 1e-6: seconds since 1970 in a double.
    file("t.csv", "t,ax,ay,az,gx,gy,gz\n" + cell + ",1,2,3,4,5,6\n");
    String wanted = format == null ? "" : "format = \"" + format + "\"\n";
    String map = "[table]\n[time]\ncolumn = \"t\"\nunit = \"text\"\n" + wanted + unit("pelvis", "");
    assertThat(read(map, "t.csv").units().get(0).timeS(0)).isCloseTo(seconds, within(1e-6));
    file("t.csv", "t,ax,ay,az,gx,gy,gz\nyesterday,1,2,3,4,5,6\n");
    assertThat(refusal(map, "t.csv")).contains("line 2").contains("Set format under [time]");
  }

  @Test
  void dateAndTimeMayStandInTwoColumnsAndMidnightPasses() throws IOException {
    file(
        "t.csv",
        """
        d,c,ax,ay,az,gx,gy,gz
        2026-01-31,23:59:59.5,1,2,3,4,5,6
        2026-02-01,00:00:00.5,1,2,3,4,5,6
        """);
    String two = "[table]\n[time]\ncolumn = [\"d\", \"c\"]\nunit = \"text\"\n" + unit("pelvis", "");
    UnitStream unit = read(two, "t.csv").units().get(0);
    assertThat(unit.timeS(1) - unit.timeS(0)).isCloseTo(1, within(1e-6));
    UnitStream clock = read(two.replace("[\"d\", \"c\"]", "\"c\""), "t.csv").units().get(0);
    assertThat(clock.timeColumnS()).containsExactly(86_399.5, 86_400.5);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"quaternion", "angle"})
  void whatWasGatheredInAStepBecomesItsMean(String form) throws IOException {
    // Given: steps of 10 ms, one sample lost, each with 0.1 m/s along z and a turn of 0.02 rad
    // about
    // (0.6, 0, 0.8), as a quaternion with either sign or as angles. Expect: 10 m/s^2 and 2 rad/s
    // about that axis, also after the loss; times in the middle of the step.
    StringBuilder table = new StringBuilder("t,vx,vy,vz,q0,q1,q2,q3,dx,dy,dz\n");
    for (int i : new int[] {1, 2, 3, 5}) {
      int sign = i == 2 ? -1 : 1;
      table.append(
          String.format(
              Locale.ROOT,
              "%.2f,0,0,0.1,%.15f,%.15f,0,%.15f,%.15f,0,%.15f%n",
              i * 0.01,
              sign * Math.cos(0.01),
              sign * 0.6 * Math.sin(0.01),
              sign * 0.8 * Math.sin(0.01),
              Math.toDegrees(0.6 * 0.02),
              Math.toDegrees(0.8 * 0.02)));
    }
    file("t.csv", table.toString());
    String turn =
        form.equals("angle")
            ? "dq = [\"dx\", \"dy\", \"dz\"]\ndq_unit = \"deg\""
            : "dq = [\"q0\", \"q1\", \"q2\", \"q3\"]";
    String map =
        SECONDS
            + "[[unit]]\npoint = \"pelvis\"\ndv = [\"vx\", \"vy\", \"vz\"]\ndv_unit = \"m/s\"\n"
            + turn;
    UnitStream unit = read(map, "t.csv").units().get(0);
    for (int i = 0; i < 4; i++) {
      assertThat(unit.accelMps2(2, i)).isCloseTo(10, within(1e-9));
      assertThat(unit.gyroRadPerS(0, i)).isCloseTo(1.2, within(1e-9));
      assertThat(unit.gyroRadPerS(2, i)).isCloseTo(1.6, within(1e-9));
    }
    assertThat(unit.timeS(0)).isCloseTo(0.005, within(1e-9));
    assertThat(unit.facts().nominalRateHz()).isCloseTo(100, within(1e-6));
  }

  private static String batches(int samples, int batch) {
    StringBuilder table = new StringBuilder("t,ax,ay,az,gx,gy,gz\n");
    for (int i = 0; i < samples; i++) {
      double sentS = 100 + (i / batch + 1) * batch / 200.0;
      table.append(String.format(Locale.ROOT, "%.6f,%d,0,9.8,0,0,0%n", sentS, i));
    }
    return table.toString();
  }

  @Test
  void samplesThatWereSentTogetherAreLaidOutEvenly() throws IOException {
    // Given: 200 Hz in batches of 8, 10 s, each batch with the time of its last sample. Expect:
    // each sample where it was taken, within a tenth of a step; without the word a refusal.
    file("t.csv", batches(2000, 8));
    UnitStream unit =
        read(SECONDS + "batches = true\n" + unit("pelvis", ""), "t.csv").units().get(0);
    assertThat(unit.size()).isEqualTo(2000);
    for (int i = 0; i < unit.size(); i++) {
      assertThat(unit.timeS(i)).isCloseTo(100 + (i + 1) / 200.0, within(0.0005));
    }
    assertThat(refusal(SECONDS + unit("pelvis", ""), "t.csv"))
        .contains("1750 samples share their time")
        .contains("set batches = true");
  }
}
