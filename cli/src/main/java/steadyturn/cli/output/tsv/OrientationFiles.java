package steadyturn.cli.output.tsv;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.cli.output.FixedDecimals;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.write.DatasetFiles;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Orientations as derivatives of an archive in the layout of Motion-BIDS: for each unit a motion
 * table without header, its channels file and their JSON files, under the raw table's own name with
 * {@code desc-orientation}.
 */
public final class OrientationFiles {

  private static final Pattern ENTITIES = Pattern.compile("(sub-[^_]+)(?:_(ses-[^_]+))?_.*");
  private static final double DEG_PER_RAD = 180 / Math.PI;
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private final Path folder;

  private OrientationFiles(Path folder) {
    this.folder = folder;
  }

  /** The place for derivatives of this archive, or of one elsewhere that shall hold them. */
  public static OrientationFiles into(Path archive) {
    return new OrientationFiles(DatasetFiles.derivatives(archive, "steadyturn", "0.1"));
  }

  /**
   * Writes the four files of one unit.
   *
   * @param runId {@code sub-mika_ses-01_task-swing_run-02}
   * @param rateHz the rate the unit was set to
   * @return the motion table
   */
  public Path write(
      String runId,
      BodyPoint point,
      double rateHz,
      OrientationMethod method,
      OrientationTrack track) {
    String stem = withTracksys(runId, point) + "_desc-orientation";
    Path place = place(runId);
    WholeFile.write(place.resolve(stem + "_channels.tsv"), channels(point, method));
    WholeFile.write(place.resolve(stem + "_channels.json"), columns());
    WholeFile.write(place.resolve(stem + "_motion.json"), sidecar(point, rateHz));
    Path table = place.resolve(stem + "_motion.tsv");
    WholeFile.write(table, out -> rows(track, out));
    return table;
  }

  /** Writes all units of a run as one STO table beside them. */
  public Path writeSto(String runId, Map<BodyPoint, OrientationTrack> tracks) {
    Path table = place(runId).resolve(runId + "_desc-orientation.sto");
    WholeFile.write(table, out -> sto(tracks, out));
    return table;
  }

  private static void sto(Map<BodyPoint, OrientationTrack> tracks, OutputStream out)
      throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    OrientationText.writeSto(tracks, writer);
    writer.flush();
  }

  /** The entity tracksys stands after task and before run. */
  private static String withTracksys(String runId, BodyPoint point) {
    String tracksys = "_tracksys-" + point.tracksysLabel();
    int run = runId.indexOf("_run-");
    return run < 0 ? runId + tracksys : runId.substring(0, run) + tracksys + runId.substring(run);
  }

  private Path place(String runId) {
    Matcher entities = ENTITIES.matcher(runId);
    if (!entities.matches()) {
      return folder;
    }
    Path player = folder.resolve(entities.group(1));
    Path lesson = entities.group(2) == null ? player : player.resolve(entities.group(2));
    return lesson.resolve("motion");
  }

  private static void rows(OrientationTrack track, OutputStream out) throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    StringBuilder row = new StringBuilder();
    double zeroS = track.size() == 0 ? 0 : track.timeS()[0];
    for (int i = 0; i < track.size(); i++) {
      row.setLength(0);
      FixedDecimals.append(row, track.timeS()[i] - zeroS, 6);
      for (double[] column : new double[][] {track.qx(), track.qy(), track.qz(), track.qw()}) {
        FixedDecimals.append(row.append('\t'), column[i], 9);
      }
      double inclinationDeg = DEG_PER_RAD * track.inclinationSigmaRad()[i];
      FixedDecimals.append(row.append('\t'), inclinationDeg, 4);
      FixedDecimals.append(row.append('\t'), DEG_PER_RAD * track.headingSigmaRad()[i], 4);
      writer.append(row).append('\n');
    }
    writer.flush();
  }

  private static String channels(BodyPoint point, OrientationMethod method) {
    StringBuilder text = new StringBuilder();
    String known = point.trackedPoint();
    row(text, "name", "component", "type", "tracked_point", "units", "reference_frame", "method");
    row(text, "latency", "n/a", "LATENCY", "n/a", "s", "n/a", "n/a");
    for (String part : List.of("x", "y", "z", "w")) {
      String name = "orientation_quat_" + part;
      row(text, name, "quat_" + part, "ORNT", known, "n/a", "earth", method.word());
    }
    for (String what : List.of("inclination", "heading")) {
      row(text, what + "_sigma", "n/a", "MISC", known, "deg", "earth", method.word());
    }
    return text.toString();
  }

  private static void row(StringBuilder text, String... cells) {
    text.append(String.join("\t", cells)).append('\n');
  }

  private static String columns() {
    Map<String, Object> earth = new LinkedHashMap<>();
    earth.put("RotationRule", "right-hand");
    earth.put(
        "Description",
        "Quaternions turn unit coordinates into earth coordinates, z up. Heading is zero at the"
            + " first sample and drifts with the gyroscope: headings of two units do not compare."
            + " Sigmas are one standard deviation.");
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("reference_frame", Map.of("Levels", Map.of("earth", earth)));
    members.put(
        "method",
        Map.of("Description", "The filter that found it, as --method of orient names it"));
    return json(members);
  }

  private static String sidecar(BodyPoint point, double rateHz) {
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("TaskName", "swing");
    members.put("SamplingFrequency", rateHz);
    members.put("TrackingSystemName", point.tracksysLabel());
    members.put("TrackedPointsCount", 1);
    members.put("MotionChannelCount", 7);
    members.put("ORNTChannelCount", 4);
    members.put("LATENCYChannelCount", 1);
    members.put("MISCChannelCount", 2);
    return json(members);
  }

  private static String json(Map<String, Object> members) {
    try {
      return JSON.writeValueAsString(members) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("plain members can always be written", e);
    }
  }
}
