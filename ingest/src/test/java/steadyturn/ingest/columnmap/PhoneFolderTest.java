package steadyturn.ingest.columnmap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.columnmap.PhoneFolder.Signs;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * Folders as phone loggers write them, of one made movement: the phone lies for five seconds
 * leaning, then turns about its x axis. Expect in each: specific force of 9.80665 m/s^2 with the
 * sign of the axis that points up, rates in rad/s.
 */
class PhoneFolderTest {

  private static final double G = 9.80665;

  @TempDir Path folder;

  private static double roll(double t) {
    return t < 5 ? 0.4 : 0.4 + 0.8 * Math.sin(t - 5);
  }

  /** What a table tells at a time, x y z. */
  @FunctionalInterface
  private interface Told {
    double[] at(double t);
  }

  private static Told force(double scale) {
    return t -> new double[] {0, scale * Math.sin(roll(t)), scale * Math.cos(roll(t))};
  }

  private static Told turning(double scale) {
    return t -> new double[] {scale * (t < 5 ? 0 : 0.8 * Math.cos(t - 5)), 0, 0};
  }

  private static Told none() {
    return t -> new double[3];
  }

  /** Writes a table at 100 Hz; the sensors of a phone start apart. */
  private void table(String name, String header, String line, double startS, Told told)
      throws IOException {
    StringBuilder text = new StringBuilder(header).append('\n');
    for (int i = 0; i < 1500; i++) {
      double t = startS + i * 0.01;
      double[] v = told.at(t);
      text.append(
              String.format(Locale.ROOT, line, t, v[0], v[1], v[2], Math.round(1.7e18 + t * 1e9)))
          .append('\n');
    }
    Files.writeString(folder.resolve(name), text);
  }

  private UnitStream read(Signs signs) {
    return ColumnMapImporter.readUnchecked(folder, PhoneFolder.map(folder, signs, BodyPoint.PELVIS))
        .units()
        .get(0);
  }

  private void isTheMovement() {
    for (Signs signs : Signs.values()) {
      UnitStream unit = read(signs);
      int sign = signs == Signs.ANDROID ? 1 : -1;
      assertThat(unit.size()).isGreaterThan(1450);
      double t0 = unit.timeS(0);
      for (int i = 0; i < unit.size(); i += 50) {
        double t = unit.timeS(i) - t0 + 0.02;
        // Within 0.01: lines between samples 10 ms apart.
        assertThat(unit.accelMps2(1, i)).isCloseTo(sign * G * Math.sin(roll(t)), within(0.01));
        assertThat(unit.accelMps2(2, i)).isCloseTo(sign * G * Math.cos(roll(t)), within(0.01));
        double rate = t < 5 ? 0 : 0.8 * Math.cos(t - 5);
        assertThat(unit.gyroRadPerS(0, i)).isCloseTo(rate, within(1e-3));
      }
    }
  }

  private static final String COMMA = "%5$d,%1$.6f,%4$.7f,%3$.7f,%2$.7f";
  private static final String PLAIN = "%1$.6f,%2$.7f,%3$.7f,%4$.7f";

  @Test
  void gravityApartIsPutBack() throws IOException {
    table("Accelerometer.csv", "time,seconds_elapsed,z,y,x", COMMA, 0.013, none());
    table("Gravity.csv", "time,seconds_elapsed,z,y,x", COMMA, 0.004, force(G));
    table("Gyroscope.csv", "time,seconds_elapsed,z,y,x", COMMA, 0.02, turning(1));
    isTheMovement();
  }

  @Test
  void accelerationsWithGravityAreTakenAsTheyAre() throws IOException {
    table(
        "Accelerometer.csv",
        "\"Time (s)\",\"X (m/s^2)\",\"Y (m/s^2)\",\"Z (m/s^2)\"",
        PLAIN,
        0,
        force(G));
    table(
        "Linear Accelerometer.csv",
        "\"Time (s)\",\"X (m/s^2)\",\"Y (m/s^2)\",\"Z (m/s^2)\"",
        PLAIN,
        0,
        none());
    table(
        "Gyroscope.csv",
        "\"Time (s)\",\"X (rad/s)\",\"Y (rad/s)\",\"Z (rad/s)\"",
        PLAIN,
        0.02,
        turning(1));
    isTheMovement();
  }

  @Test
  void tablesAreKnownByTheirHeadersWhereTheirNamesSayNothing() throws IOException {
    // Given: headers as phyphox-experiments@00062297 gyroscope.phyphox gives them for its export,
    // whose table is called "Raw Data" whatever the sensor.
    table(
        "Raw Data 1.csv",
        "\"Time (s)\",\"Gyroscope x (rad/s)\",\"Gyroscope y (rad/s)\",\"Gyroscope z (rad/s)\"",
        PLAIN,
        0.02,
        turning(1));
    table(
        "Raw Data 2.csv",
        "\"Time (s)\",\"Acceleration x (m/s^2)\",\"Acceleration y (m/s^2)\",\"Acceleration z (m/s^2)\"",
        PLAIN,
        0,
        force(G));
    isTheMovement();
  }

  @Test
  void unitsOfTheHeaderOrOfTheNumbersAreTaken() throws IOException {
    table(
        "gravity.csv",
        "timestamp,gravity_x,gravity_y,gravity_z",
        "%5$d,%2$.7f,%3$.7f,%4$.7f",
        0,
        force(1));
    table(
        "user_acceleration.csv",
        "timestamp,acc_x,acc_y,acc_z",
        "%5$d,%2$.7f,%3$.7f,%4$.7f",
        0,
        none());
    table(
        "rotation_rate.csv",
        "timestamp;x (°/s);y (°/s);z (°/s)",
        "%5$d;%2$.7f;%3$.7f;%4$.7f",
        0.02,
        turning(180 / Math.PI));
    isTheMovement();
  }

  private String refusal() {
    RecordingException told =
        catchThrowableOfType(RecordingException.class, () -> read(Signs.ANDROID));
    assertThat(told).as("a refusal").isNotNull();
    assertThat(told.getMessage()).hasLineCount(1);
    return String.valueOf(told.getMessage());
  }

  @Test
  void whatIsMissingIsNamed() throws IOException {
    assertThat(refusal()).contains("no table named Gyroscope");
    table("Gyroscope.csv", "t,x,y,z", PLAIN, 0, turning(1));
    assertThat(refusal()).contains("no table named Accelerometer");
    table("Accelerometer.csv", "t,x,y,z", PLAIN, 0, none());
    assertThat(refusal()).contains("gravity is taken out").contains("log gravity too");
  }
}
