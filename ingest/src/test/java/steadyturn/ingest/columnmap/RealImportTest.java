package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.recording.RecordingException;
import steadyturn.ingest.sample.UnitStream;

/** The five layouts of the open recordings, through the maps that come with the program. */
class RealImportTest {

  @ParameterizedTest(name = "{0} through {1}")
  @CsvSource({
    "broad/01_undisturbed_slow_rotation_A.csv.gz, handheld-with-optical-truth, 56940, 285.71",
    "broad/18_undisturbed_fast_translation_with_breaks_B.csv.gz, handheld-with-optical-truth,"
        + " 53124, 285.71",
    "qmt_fullbody/hip.csv.gz, worn-unit, 10000, 100",
    "qmt_fullbody/forearm_left.csv.gz, worn-unit, 10000, 100",
    "qmt_fullbody/hand_right.csv.gz, worn-unit, 10000, 100",
    "mobgap/TimeMeasure1_Test11_Trial1.csv, counter-g-degrees, 13759, 100",
    "mobgap/TimeMeasure1_Test5_Trial1.csv, counter-g-degrees, 1246, 100",
    "opensense/MT_012005D6_031-000_00B421AF.txt, tabs-comment-header, 3369, 100",
    "opensense/imuData01.csv, four-units-two-header-lines, 1024, 128",
    "fusion/sensor_data.csv, time-g-degrees, 13514, 99.21"
  })
  void everyLayoutIsReadAndItsStillPartsShowGravity(
      String name, String map, int samples, double rateHz) {
    // Given: sample counts by counting lines of the files, rates by their README. Expect: that many
    // samples at that rate; 9.81 m/s^2 within 5 % in the quietest tenth of every unit, as the map
    // check asks, so that the import itself does not refuse.
    Imported imported = ColumnMapImporter.read(RealRecordings.file(name), ColumnMap.bundled(map));
    for (UnitStream unit : imported.units()) {
      assertThat(unit.size()).isEqualTo(samples);
      assertThat(unit.facts().nominalRateHz()).isCloseTo(rateHz, within(0.006));
      QuietParts quiet = QuietParts.in(EvenSamples.of(unit)).get(0);
      assertThat(quiet.gravity()).isCloseTo(9.81, within(0.05 * 9.81));
    }
  }

  @Test
  void gravityAndDegreesPerSecondBecomeSiUnits() {
    // Given: the first line of the file, "0,0.98849...,-0.05085...,...,-2.32620...": 0.98849 g and
    // -2.3262 deg/s. Expect: 0.9884917383408199 x 9.80665 m/s^2 and -2.326208648231142 x pi/180.
    UnitStream unit =
        ColumnMapImporter.read(
                RealRecordings.file("mobgap/TimeMeasure1_Test11_Trial1.csv"),
                ColumnMap.bundled("counter-g-degrees"))
            .units()
            .get(0);
    assertThat(unit.accelMps2(0, 0)).isCloseTo(0.9884917383408199 * 9.80665, within(1e-12));
    assertThat(unit.gyroRadPerS(0, 0)).isCloseTo(-2.326208648231142 * Math.PI / 180, within(1e-12));
    assertThat(unit.timeS(13758)).isCloseTo(137.58, within(1e-9));
  }

  @ParameterizedTest(name = "{0}: {2} for {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // unit of acceleration
        "broad/01_undisturbed_slow_rotation_A.csv.gz|accel_unit = \"m/s^2\"|accel_unit = \"g\""
            + "|accel_unit is likely m/s^2.",
        "mobgap/TimeMeasure1_Test11_Trial1.csv|accel_unit = \"g\"|accel_unit = \"m/s^2\""
            + "|accel_unit is likely g.",
        "fusion/sensor_data.csv|accel_unit = \"g\"|accel_unit = \"mg\""
            + "|accel_unit is likely g.",
        // unit of rate
        "fusion/sensor_data.csv|gyro_unit = \"deg/s\"|gyro_unit = \"rad/s\""
            + "|gyro_unit is likely deg/s.",
        "qmt_fullbody/hand_left.csv.gz|gyro_unit = \"rad/s\"|gyro_unit = \"deg/s\""
            + "|gyro_unit is likely rad/s.",
        "qmt_fullbody/hip.csv.gz|gyro_unit = \"rad/s\"|gyro_unit = \"deg/s\""
            + "|gyro_unit is likely rad/s.",
        "broad/18_undisturbed_fast_translation_with_breaks_B.csv.gz|gyro_unit = \"rad/s\""
            + "|gyro_unit = \"deg/s\"|gyro_unit is likely rad/s.",
        // one sign, two signs, order
        "mobgap/TimeMeasure1_Test11_Trial1.csv|\"gyr_y\"|\"-gyr_y\""
            + "|the sign of gyro y is likely wrong; try gyro = [\"gyr_x\", \"gyr_y\", \"gyr_z\"].",
        "broad/07_undisturbed_fast_rotation_B.csv.gz|\"az_m_s2\"|\"-az_m_s2\""
            + "|the sign of accel z is likely wrong, or the signs of gyro x and y; try accel ="
            + " [\"ax_m_s2\", \"ay_m_s2\", \"az_m_s2\"].",
        "opensense/MT_012005D6_031-000_00B421AF.txt|[\"Gyr_X\", \"Gyr_Y\"|[\"Gyr_Y\", \"Gyr_X\""
            + "|gyroscope and accelerometer axes do not belong together; try gyro = [\"Gyr_X\","
            + " \"Gyr_Y\", \"Gyr_Z\"]",
        "qmt_fullbody/hand_right.csv.gz|[\"gx_rad_s\", \"gy_rad_s\", \"gz_rad_s\"]"
            + "|[\"gy_rad_s\", \"gz_rad_s\", \"gx_rad_s\"]|try gyro = [\"gx_rad_s\", \"gy_rad_s\","
            + " \"gz_rad_s\"]",
        // gravity from a magnetometer
        "fusion/sensor_data.csv|\"Accelerometer X (g)\"|\"Magnetometer X (uT)\""
            + "|check accel_unit, and that accel names the three columns of one accelerometer."
      })
  void aWrongMapIsCaughtAndTheMessageNamesWhatIsWrong(
      String name, String right, String wrong, String expected) throws Exception {
    // Given: a bundled map with one thing made wrong. Expect: a refusal that names that thing.
    ColumnMap map = changed(mapFor(name), text -> text.replace(right, wrong));
    RecordingException told =
        catchThrowableOfType(
            RecordingException.class, () -> ColumnMapImporter.read(RealRecordings.file(name), map));
    assertThat(told).as("a refusal").isNotNull();
    assertThat(told.getMessage()).contains("is likely wrong: ").contains(expected).hasLineCount(1);
  }

  private static String mapFor(String name) {
    return switch (name.substring(0, name.indexOf('/'))) {
      case "broad" -> "handheld-with-optical-truth";
      case "qmt_fullbody" -> "worn-unit";
      case "mobgap" -> "counter-g-degrees";
      case "fusion" -> "time-g-degrees";
      default -> "tabs-comment-header";
    };
  }

  private static ColumnMap changed(String map, UnaryOperator<String> change) throws Exception {
    try (var in = ColumnMap.class.getResourceAsStream(map + ".toml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      String spoilt = change.apply(text);
      assertThat(spoilt).isNotEqualTo(text);
      Path file = Files.createTempFile("map", ".toml");
      try {
        Files.writeString(file, spoilt);
        return ColumnMap.read(file);
      } finally {
        Files.delete(file);
      }
    }
  }
}
