package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.recording.table.RecordingException;

/** Tables that look like those of a unit and are not: one line each, what it is and what to do. */
class RefusedTablesTest {

  private static final String MAP =
      """
      [table]
      [time]
      column = "t"
      unit = "s"
      [[unit]]
      point = "pelvis"
      accel = ["ax", "ay", "az"]
      accel_unit = "g"
      gyro = ["gx", "gy", "gz"]
      gyro_unit = "deg/s"
      """;

  @TempDir Path folder;

  private String refusal(String map, Path table) {
    RecordingException told =
        catchThrowableOfType(
            RecordingException.class,
            () ->
                ColumnMapImporter.read(
                    table,
                    ColumnMap.read(Files.writeString(folder.resolve("m.toml"), map)),
                    false));
    assertThat(told).as("a refusal").isNotNull();
    assertThat(told.getMessage()).hasLineCount(1);
    return String.valueOf(told.getMessage());
  }

  /** A unit on a boom that swings about x, seen by roll; what stands in for its rates is told. */
  private Path boom(boolean hasAngles, double gravity, String before) throws IOException {
    StringBuilder table = new StringBuilder("who,t,ax,ay,az,gx,gy,gz\n");
    for (int i = 0; i < 4000; i++) {
      double t = i * 0.01;
      double roll = t < 4 ? 0.5 : 0.5 + 0.9 * Math.sin(0.7 * (t - 4));
      double rate = t < 4 ? 0.01 : 0.63 * Math.cos(0.7 * (t - 4));
      table.append(
          String.format(
              Locale.ROOT,
              "%s,%.2f,%.5f,%.5f,%.5f,%.4f,%.4f,%.4f%n",
              before.equals("in turns") ? i % 3 == 0 ? "east" : "west" : before,
              t,
              0.001 * (i % 2),
              gravity * Math.sin(roll),
              gravity * Math.cos(roll),
              Math.toDegrees(hasAngles ? roll : rate),
              hasAngles ? 0.3 : 0,
              hasAngles ? 100 + t : 0));
    }
    return Files.writeString(folder.resolve("boom.csv"), table);
  }

  @ParameterizedTest(name = "declared in {0}")
  @ValueSource(strings = {"deg/s", "rad/s"})
  void anglesDeclaredAsRates(String declared) throws IOException {
    // Given: the roll angle in degrees in the gyroscope's columns. Expect: told as what it is,
    // whatever unit is declared. The same movement by its rates is not doubted for this.
    String map = MAP.replace("deg/s", declared);
    assertThat(refusal(map, boom(true, 1, "a")))
        .contains("gyro x follows the lean")
        .contains("angles");
    Path rates = boom(false, 1, "a");
    ColumnMap right = ColumnMap.read(Files.writeString(folder.resolve("m.toml"), MAP));
    assertThat(ColumnMapImporter.read(rates, right, true).units().get(0).size()).isEqualTo(4000);
  }

  @Test
  void accelerationsWithoutGravity() throws IOException {
    assertThat(refusal(MAP, boom(false, 0, "a")))
        .contains("gravity seems to be taken out")
        .contains("gravity = [...]");
  }

  @Test
  void twoUnitsInOneTable() throws IOException {
    assertThat(refusal(MAP, boom(false, 1, "in turns")))
        .contains("Column who tells units apart (east, west)")
        .contains("where = { column = \"who\", is = \"east\" }");
  }

  @Test
  void twoUnitsWithAnglesAsARealProgramLogsThem() throws IOException {
    // Given: 'two-units-one-table-angles.csv' (MIT, repo TestMannequin/WitMotionExplore@f3c6c6b):
    // two units by address, times shared by batches, accelerations in m/s^2, angles and no rates.
    // Expect: first that there are two; with one of them chosen, that samples share times; with
    // batches, that these are angles.
    Path table = RealRecordings.file("units").resolve("two-units-one-table-angles.csv");
    String map =
        MAP.replace("\"t\"", "\"timestamp\"")
            .replace("[\"ax\", \"ay\", \"az\"]", "[\"AccX\", \"AccY\", \"AccZ\"]")
            .replace("\"g\"", "\"m/s^2\"")
            .replace("[\"gx\", \"gy\", \"gz\"]", "[\"AngX\", \"AngY\", \"AngZ\"]");
    assertThat(refusal(map, table)).contains("Column address tells units apart");
    String one = map + "where = { column = \"address\", is = \"F3:89:79:49:6C:B3\" }\n";
    assertThat(refusal(one, table)).contains("set batches = true");
    String spread = one.replace("unit = \"s\"", "unit = \"s\"\nbatches = true");
    assertThat(refusal(spread, table)).contains("angles, not rates");
  }

  @Test
  void aMapThatCannotBeCheckedSaysHowItCanBe() throws IOException {
    // Given: a unit that never turns enough. Expect: refused, with what to record; read at its word
    // when that is asked for, with a notice.
    StringBuilder still = new StringBuilder("t,ax,ay,az,gx,gy,gz\n");
    for (int i = 0; i < 1000; i++) {
      still.append(String.format(Locale.ROOT, "%.2f,0,%.4f,1,0,0,0.1%n", i * 0.01, 1e-3 * (i % 2)));
    }
    Path table = Files.writeString(folder.resolve("still.csv"), still);
    assertThat(refusal(MAP, table))
        .contains("could not be checked")
        .contains("turn the unit in the hand")
        .contains("--unchecked");
    Imported taken = ColumnMapImporter.read(table, ColumnMap.read(folder.resolve("m.toml")), true);
    assertThat(taken.notices()).singleElement().asString().contains("too little turning");
  }
}
