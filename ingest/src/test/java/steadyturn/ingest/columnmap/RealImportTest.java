package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.columnmap.check.MapCheck;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
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
    Imported imported =
        ColumnMapImporter.read(RealRecordings.file(name), ColumnMap.bundled(map), true);
    for (UnitStream unit : imported.units()) {
      assertThat(unit.size()).isEqualTo(samples);
      assertThat(unit.facts().nominalRateHz()).isCloseTo(rateHz, within(0.006));
      assertThat(MapCheck.shownMps2(unit)).isCloseTo(9.81, within(0.05 * 9.81));
    }
  }

  @Test
  void everyLayoutBecomesADatasetThatReadsBackTheSame(@TempDir Path root) {
    // Given: one file of each layout, imported and written as lessons of one player. Expect: the
    // samples read back, within half of the last decimal written (see docs/formats.md).
    Map<String, String> files =
        Map.of(
            "broad1", "broad/14_undisturbed_slow_translation_with_breaks_B.csv.gz",
            "qmt1", "qmt_fullbody/hip.csv.gz",
            "gait1", "mobgap/TimeMeasure1_Test5_Trial2.csv",
            "tabs1", "opensense/MT_012005D6_031-000_00B421AF.txt",
            "four1", "opensense/imuData01.csv",
            "time1", "fusion/sensor_data.csv");
    RecordingWriter writer = RecordingWriter.into(root, "Open recordings");
    files.forEach(
        (lesson, name) -> {
          String map = lesson.equals("four1") ? "four-units-two-header-lines" : mapFor(name);
          Imported imported =
              ColumnMapImporter.read(RealRecordings.file(name), ColumnMap.bundled(map), true);
          Recording written =
              ColumnMapImporter.recording(
                  lesson, Player.unmeasured("open", Handedness.RIGHT), imported.units(), List.of());
          writer.write(
              written, RunLabel.lesson("open", lesson), LocalDateTime.of(1925, 1, 1, 0, 0));
          Session session = Archive.open(root.resolve("sub-open/ses-" + lesson)).sessions().get(0);
          Recording read = RecordingReader.read(session.runs().get(0)).recording();
          for (UnitStream unit : written.units()) {
            UnitStream back = read.unit(unit.point()).orElseThrow();
            assertThat(farthest(back.timeColumnS(), unit.timeColumnS())).isLessThan(1.1e-6);
            assertThat(farthest(back.accelColumnMps2(1), unit.accelColumnMps2(1)))
                .isLessThan(0.51e-5);
            assertThat(farthest(back.gyroColumnRadPerS(2), unit.gyroColumnRadPerS(2)))
                .isLessThan(0.51e-6);
          }
        });
  }

  private static double farthest(double[] a, double[] b) {
    assertThat(a).hasSameSizeAs(b);
    double farthest = 0;
    for (int i = 0; i < a.length; i++) {
      farthest = Math.max(farthest, Math.abs(a[i] - b[i]));
    }
    return farthest;
  }

  @Test
  void gravityAndDegreesPerSecondBecomeSiUnits() {
    // Given: the first line of the file, "0,0.98849...,-0.05085...,...,-2.32620...": 0.98849 g and
    // -2.3262 deg/s. Expect: 0.9884917383408199 x 9.80665 m/s^2 and -2.326208648231142 x pi/180.
    UnitStream unit =
        ColumnMapImporter.read(
                RealRecordings.file("mobgap/TimeMeasure1_Test11_Trial1.csv"),
                ColumnMap.bundled("counter-g-degrees"),
                true)
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
    Path file = RealRecordings.file(name); // before the lambda, which would catch its "left out"
    ColumnMap map = changed(mapFor(name), text -> text.replace(right, wrong));
    RecordingException told =
        catchThrowableOfType(
            RecordingException.class, () -> ColumnMapImporter.read(file, map, true));
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
