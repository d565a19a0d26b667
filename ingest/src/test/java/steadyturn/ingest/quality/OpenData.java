package steadyturn.ingest.quality;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Reads the open recordings that lie beside the project; skips the test where they are absent. */
public final class OpenData {

  private static final Path FOLDER = Path.of("..", "..", "shared", "data");

  private OpenData() {}

  /**
   * A comma-separated table with one header line.
   *
   * @param firstAccel column of the first acceleration, which comes in accelUnit (m/s^2)
   * @param firstGyro column of the first rate, which comes in gyroUnit (rad/s)
   * @param rateHz the stated rate; where the table counts samples instead of seconds, its period
   */
  static UnitStream read(
      String name,
      BodyPoint point,
      double rateHz,
      int firstAccel,
      double accelUnit,
      int firstGyro,
      double gyroUnit,
      boolean countsSamples)
      throws IOException {
    Path file = FOLDER.resolve(name);
    assumeTrue(Files.exists(file), "open recordings are not at ../shared/data: " + file);
    List<double[]> rows = rows(file);
    double[] timeS = new double[rows.size()];
    double[][] accel = new double[3][rows.size()];
    double[][] gyro = new double[3][rows.size()];
    for (int i = 0; i < timeS.length; i++) {
      double[] row = rows.get(i);
      timeS[i] = countsSamples ? row[0] / rateHz : row[0];
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][i] = row[firstAccel + axis] * accelUnit;
        gyro[axis][i] = row[firstGyro + axis] * gyroUnit;
      }
    }
    return new UnitStream(UnitFacts.plain(point, rateHz), timeS, accel, gyro);
  }

  /** One of the worn units of the whole-body recording. */
  public static UnitStream worn(String name, BodyPoint point) throws IOException {
    return read("qmt_fullbody/" + name + ".csv.gz", point, 100, 1, 1, 4, 1, false);
  }

  private static List<double[]> rows(Path file) throws IOException {
    try (InputStream raw = Files.newInputStream(file);
        InputStream in = file.toString().endsWith(".gz") ? new GZIPInputStream(raw) : raw;
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return reader.lines().skip(1).map(OpenData::numbers).toList();
    }
  }

  private static double[] numbers(String line) {
    String[] cells = line.split(",", -1);
    double[] values = new double[cells.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = cells[i].equals("nan") ? Double.NaN : Double.parseDouble(cells[i]);
    }
    return values;
  }
}
