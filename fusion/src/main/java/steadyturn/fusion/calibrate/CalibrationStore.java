package steadyturn.fusion.calibrate;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import steadyturn.fusion.calibrate.UnitCalibration.Correction;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The calibrations kept in an archive: one JSON file a unit and day, under {@code
 * derivatives/steadyturn/calibration}. Nothing is overwritten but the same unit's file of the same
 * day; the latest counts.
 */
public final class CalibrationStore {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private final Path root;
  private final Path folder;

  private CalibrationStore(Path root) {
    this.root = root;
    folder = root.resolve("derivatives/steadyturn/calibration");
  }

  /** The store of the archive with this root folder. */
  public static CalibrationStore of(Path archiveRoot) {
    return new CalibrationStore(archiveRoot);
  }

  /** Writes a calibration and says where. */
  public Path save(UnitCalibration calibration) {
    String name = prefix(calibration.serialNumber()) + calibration.date() + "_calibration.json";
    Path file = folder.resolve(name);
    return ArchiveLock.whileWriting(
        root,
        () -> {
          requireSameUnit(file, calibration.serialNumber());
          WholeFile.writeText(
              file, to -> to.write(JSON.writeValueAsString(toJson(calibration)) + "\n"));
          return file;
        });
  }

  /** Serial numbers that differ in signs only share a file name; neither may lose its file. */
  private static void requireSameUnit(Path file, String serialNumber) {
    if (Files.exists(file) && !read(file).serialNumber().equals(serialNumber)) {
      throw CalibrationException.of(
          "%s belongs to unit %s, not %s; keep this unit in another archive (--into)",
          file.getFileName(), read(file).serialNumber(), serialNumber);
    }
  }

  /** The latest calibration of a unit, if there is one. */
  public Optional<UnitCalibration> latest(String serialNumber) {
    return latest(serialNumber, files()).map(CalibrationStore::read);
  }

  /** Every file with a calibration. */
  public List<Path> files() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().endsWith("_calibration.json"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The one that counts for a unit, of those files. */
  public static Optional<Path> latest(String serialNumber, List<Path> files) {
    return files.stream()
        .filter(f -> !serialNumber.isBlank())
        .filter(f -> f.getFileName().toString().startsWith(prefix(serialNumber)))
        .max(Comparator.comparing(f -> f.getFileName().toString()));
  }

  /** A recording with the latest calibration of each of its units taken off. */
  public Recording applyTo(Recording recording) {
    List<UnitStream> units = recording.units().stream().map(this::applyTo).toList();
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  /** A unit's stream with its latest calibration taken off, or as it is where there is none. */
  public UnitStream applyTo(UnitStream unit) {
    return latest(unit.facts().serialNumber()).map(c -> c.apply(unit)).orElse(unit);
  }

  private static String prefix(String serialNumber) {
    return "unit-" + serialNumber.replaceAll("[^A-Za-z0-9]", "-") + "_date-";
  }

  private static ObjectNode toJson(UnitCalibration c) {
    ObjectNode root = JSON.createObjectNode();
    root.put("DeviceSerialNumber", c.serialNumber());
    root.put("Date", c.date().toString());
    root.put("Gravity_m_per_s2", c.gravityMps2());
    root.set("GyroBias_rad_per_s", vector(c.gyro().bias()));
    root.set("GyroMatrix", matrix(c.gyro().matrix()));
    root.set("AccelBias_m_per_s2", vector(c.accel().bias()));
    root.set("AccelMatrix", matrix(c.accel().matrix()));
    ObjectNode parts = root.putObject("Parts");
    c.parts().forEach((part, day) -> parts.put(part, day.toString()));
    ObjectNode figures = root.putObject("Figures");
    c.figures().forEach(figures::put);
    return root;
  }

  private static ArrayNode vector(Vector3 v) {
    return JSON.createArrayNode().add(v.x()).add(v.y()).add(v.z());
  }

  private static ArrayNode matrix(AxisMatrix m) {
    return JSON.createArrayNode().add(vector(m.x())).add(vector(m.y())).add(vector(m.z()));
  }

  private static UnitCalibration read(Path file) {
    try {
      JsonNode root = JSON.readTree(file.toFile());
      SortedMap<String, LocalDate> parts = new TreeMap<>();
      root.path("Parts")
          .properties()
          .forEach(e -> parts.put(e.getKey(), LocalDate.parse(e.getValue().asText())));
      SortedMap<String, Double> figures = new TreeMap<>();
      root.path("Figures")
          .properties()
          .forEach(e -> figures.put(e.getKey(), e.getValue().asDouble()));
      return new UnitCalibration(
          root.path("DeviceSerialNumber").asText(),
          LocalDate.parse(root.path("Date").asText()),
          number(root, "Gravity_m_per_s2"),
          new Correction(vector(root.path("GyroBias_rad_per_s")), matrix(root.path("GyroMatrix"))),
          new Correction(vector(root.path("AccelBias_m_per_s2")), matrix(root.path("AccelMatrix"))),
          parts,
          figures);
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException e) {
      throw new CalibrationException(
          file.getFileName() + " is no calibration: " + e.getMessage() + "; calibrate again", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double number(JsonNode root, String key) {
    JsonNode node = root.path(key);
    if (!node.isNumber()) {
      throw new IllegalArgumentException(key + " is not a number");
    }
    return node.asDouble();
  }

  private static Vector3 vector(JsonNode node) {
    if (!node.isArray() || node.size() != 3 || !node.get(0).isNumber()) {
      throw new IllegalArgumentException("three numbers expected, found " + node);
    }
    return new Vector3(node.get(0).asDouble(), node.get(1).asDouble(), node.get(2).asDouble());
  }

  private static AxisMatrix matrix(JsonNode node) {
    if (!node.isArray() || node.size() != 3) {
      throw new IllegalArgumentException("three rows expected, found " + node);
    }
    return new AxisMatrix(vector(node.get(0)), vector(node.get(1)), vector(node.get(2)));
  }
}
