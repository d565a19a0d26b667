package steadyturn.cli.output.tsv;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import steadyturn.cli.output.FixedDecimals;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.JsonText;
import steadyturn.ingest.recording.write.DatasetFiles;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Orientations as derivatives of an archive in the layout of Motion-BIDS: for each unit a motion
 * table without header, its channels file and their JSON files, under the raw table's own name with
 * {@code desc-orientation}.
 */
public final class OrientationFiles {

  private final Path archive;

  /** A table that was written, and whether it took the place of an older one. */
  public record Written(Path table, boolean replaced) {}

  private OrientationFiles(Path archive) {
    this.archive = archive;
  }

  /** The place for derivatives of this archive, or of one elsewhere that shall hold them. */
  public static OrientationFiles into(Path archive) {
    return new OrientationFiles(archive);
  }

  /**
   * Writes the four files of one unit, over older ones of the same name.
   *
   * @param runId {@code sub-mika_ses-01_task-swing_run-02}
   * @param rateHz the rate the unit was set to
   * @return the motion table
   */
  public Written write(
      String runId,
      BodyPoint point,
      double rateHz,
      OrientationMethod method,
      OrientationTrack track) {
    String stem = withTracksys(runId, point) + "_desc-orientation";
    return alone(
        runId,
        stem + "_motion.tsv",
        table -> {
          WholeFile.write(table.resolveSibling(stem + "_channels.tsv"), channels(point, method));
          WholeFile.write(
              table.resolveSibling(stem + "_channels.json"),
              Shipped.text(getClass(), "orientation_channels.json"));
          WholeFile.write(table.resolveSibling(stem + "_motion.json"), sidecar(point, rateHz));
          WholeFile.writeText(table, out -> rows(track, out));
        });
  }

  /** Writes all units of a run as one STO table beside them. */
  public Written writeSto(String runId, Map<BodyPoint, OrientationTrack> tracks) {
    return alone(
        runId,
        runId + "_desc-orientation.sto",
        table -> WholeFile.writeText(table, out -> OrientationText.writeSto(tracks, out)));
  }

  /** Nobody else writes into the archive meanwhile. */
  private Written alone(String runId, String name, Consumer<Path> work) {
    return ArchiveLock.whileWriting(
        archive,
        () -> {
          Path folder = DatasetFiles.derivatives(archive, "steadyturn", "0.1");
          Path table = folder.resolve(RunPlace.folder(runId) + name);
          boolean replaced = Files.exists(table);
          work.accept(table);
          return new Written(table, replaced);
        });
  }

  /** The entity tracksys stands after task and before run. */
  private static String withTracksys(String runId, BodyPoint point) {
    String tracksys = "_tracksys-" + point.tracksysLabel();
    int run = runId.indexOf("_run-");
    return run < 0 ? runId + tracksys : runId.substring(0, run) + tracksys + runId.substring(run);
  }

  private static void rows(OrientationTrack track, Writer writer) throws IOException {
    StringBuilder row = new StringBuilder();
    double zeroS = track.size() == 0 ? 0 : track.timeS()[0];
    for (int i = 0; i < track.size(); i++) {
      row.setLength(0);
      FixedDecimals.append(row, track.timeS()[i] - zeroS, 6);
      FixedDecimals.cells(row, '\t', 9, track.qx()[i], track.qy()[i], track.qz()[i], track.qw()[i]);
      OrientationText.sigmas(row, '\t', track, i);
      writer.append(row).append('\n');
    }
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
    return JsonText.of(members);
  }
}
