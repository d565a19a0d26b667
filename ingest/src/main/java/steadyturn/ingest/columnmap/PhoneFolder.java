package steadyturn.ingest.columnmap;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.ingest.columnmap.check.MapCheck;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.MapPart;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.UnitColumns;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.StandardGravity;

/**
 * Finds out how a phone's logger wrote its tables, one file a sensor, and writes the column map for
 * them. Which file is what is told by its name, which column by its header, and whether gravity is
 * in the accelerations by looking at the quiet parts: loggers call both kinds by one name.
 *
 * <p>Names, columns and signs by tszheichoi/awesome-sensor-logger@085a7bc5 UNITS.md and @0a1734f9
 * CROSSPLATFORM.md, headers by phyphox/phyphox-experiments@00062297 gyroscope.phyphox, user
 * acceleration and rotation rate by Core Motion's names; "gyro" is from memory. What does not fit
 * is refused with a sentence.
 */
public final class PhoneFolder {

  /** Which sign an axis shows that points up at rest. */
  public enum Signs {
    /** +9.81: the convention of Android, and of loggers that turn the others' signs. */
    ANDROID(1),
    /** -1 g: the convention of iOS, in all three accelerations it tells. */
    IOS(-1);

    private final int up;

    Signs(int up) {
      this.up = up;
    }

    @Override
    public String toString() {
      return name().toLowerCase(ROOT);
    }
  }

  /** Accelerations of less at rest have lost gravity, in m/s^2 as in g: our choice. */
  private static final double LEAST_GRAVITY = 0.7;

  private static final List<String> TOTAL =
      List.of("totalacceleration", "accelerometer", "acceleration", "accelerometeruncalibrated");
  private static final List<String> WITHOUT =
      List.of(
          "linearacceleration",
          "linearaccelerometer",
          "useracceleration",
          "accelerometer",
          "acceleration");
  private static final List<String> GRAVITY = List.of("gravity");
  private static final List<String> GYRO =
      List.of("gyroscope", "gyro", "rotationrate", "gyroscopeuncalibrated");

  private final Path folder;
  private final Signs signs;
  private final List<Path> tables;

  private PhoneFolder(Path folder, Signs signs) {
    this.folder = folder;
    this.signs = signs;
    try (Stream<Path> files = Files.list(folder)) {
      tables =
          files
              .filter(f -> f.toString().matches("(?i).*\\.(csv|tsv|txt)"))
              .sorted(Comparator.comparing(Path::toString))
              .toList();
    } catch (IOException e) {
      throw RecordingException.of(folder, "is no folder of tables. Unpack what the logger wrote.");
    }
  }

  /** The map for a folder, of a phone worn at a point. */
  public static ColumnMap map(Path folder, Signs signs, BodyPoint point) {
    return new PhoneFolder(folder, signs).map(point);
  }

  private ColumnMap map(BodyPoint point) {
    Path gyroTable = tables(GYRO).stream().findFirst().orElseThrow(() -> lacks("Gyroscope"));
    MapPart gyro = part(gyroTable, point, "gyro", 1);
    for (Path total : tables(TOTAL)) {
      double shown = shown(gyro, part(total, point, "accel", 1));
      if (shown > LEAST_GRAVITY) {
        return map(gyro, part(total, point, "accel", scale(shown)));
      }
    }
    Path without = tables(WITHOUT).stream().findFirst().orElseThrow(() -> lacks("Accelerometer"));
    Path gravity =
        tables(GRAVITY).stream()
            .findFirst()
            .orElseThrow(
                () ->
                    RecordingException.of(
                        without,
                        "gravity is taken out of these accelerations. Let the phone log gravity"
                            + " too, or the accelerations with it, and record anew."));
    double scale = scale(shown(gyro, part(gravity, point, "accel", 1)));
    return map(gyro, part(without, point, "accel", scale), part(gravity, point, "gravity", scale));
  }

  private ColumnMap map(MapPart... parts) {
    return new ColumnMap(folder.toString(), List.of(parts));
  }

  private RecordingException lacks(String what) {
    return RecordingException.of(
        folder, "holds no table named " + what + ". Switch that sensor on in the logger.");
  }

  private double shown(MapPart gyro, MapPart accel) {
    return MapCheck.shownMps2(
        ColumnMapImporter.readUnchecked(folder, map(gyro, accel)).units().get(0));
  }

  /** Numbers of about 1 where no unit is named are in g. */
  private static double scale(double shown) {
    return Math.abs(shown - 1) < 0.1 ? StandardGravity.MPS2 : 1;
  }

  private List<Path> tables(List<String> names) {
    return names.stream()
        .flatMap(name -> tables.stream().filter(table -> tells(table, name)))
        .toList();
  }

  private static boolean tells(Path table, String name) {
    return plain(stem(table)).equals(name) || plain(PhoneTable.quantity(table)).equals(name);
  }

  private static String stem(Path table) {
    return table.getFileName().toString().replaceFirst("\\.[^.]*$", "");
  }

  private static String plain(String name) {
    return name.toLowerCase(ROOT).replaceAll("[^a-z]", "");
  }

  private MapPart part(Path table, BodyPoint point, String key, double scale) {
    PhoneTable layout = PhoneTable.of(table);
    boolean isTurn = key.equals("gyro");
    List<ColumnRef> xyz =
        layout.axes().stream().map(axis -> axis.turned(isTurn ? 1 : signs.up)).toList();
    double toSi = scale * (isTurn ? layout.rateToSi() : layout.accelToSi());
    MappedVector vector = new MappedVector(key, xyz, toSi, Double.POSITIVE_INFINITY);
    UnitColumns unit =
        new UnitColumns(
            point,
            "",
            Optional.empty(),
            Optional.of(vector).filter(v -> key.equals("accel")),
            Optional.of(vector).filter(v -> key.equals("gravity")),
            Optional.of(vector).filter(v -> key.equals("gyro")),
            OptionalDouble.empty());
    return new MapPart(
        table.getFileName().toString(), layout.shape(), layout.time(), List.of(unit));
  }
}
