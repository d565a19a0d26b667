package steadyturn.ingest.recording.write;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.Shipped;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.JsonText;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;

/** What stands beside the motion table of one unit: its rate and scales, its columns. */
public final class UnitSidecars {

  private static final String COLUMNS =
      "name\tcomponent\ttype\ttracked_point\tunits\tplacement\treference_frame\tfull_scale"
          + "\tcalibration";

  private static final List<String> AXES = List.of("x", "y", "z");

  private UnitSidecars() {}

  /**
   * Writes the three sidecars of a unit's motion table into its folder.
   *
   * @param effectiveRateHz the mean rate of the samples, where it is known
   */
  public static void write(
      Path folder, RunLabel label, UnitFacts facts, OptionalDouble effectiveRateHz) {
    String tracksys = facts.point().tracksysLabel();
    WholeFile.write(
        folder.resolve(label.fileName(tracksys, "motion.json")),
        JsonText.of(motion(label, facts, effectiveRateHz)));
    WholeFile.write(folder.resolve(label.fileName(tracksys, "channels.tsv")), channels(facts));
    WholeFile.write(
        folder.resolve(label.fileName(tracksys, "channels.json")),
        Shipped.text(UnitSidecars.class, "channels.json"));
  }

  private static Map<String, Object> motion(
      RunLabel label, UnitFacts facts, OptionalDouble effectiveRateHz) {
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("TaskName", label.task());
    if (label.task().equals(RunLabel.SWING)) {
      members.put("TaskDescription", "Full golf swings and the wear steps before them");
    }
    members.put("SamplingFrequency", facts.nominalRateHz());
    effectiveRateHz.ifPresent(rate -> members.put("SamplingFrequencyEffective", rate));
    members.put("TrackingSystemName", facts.point().tracksysLabel());
    members.put("TrackedPointsCount", 1);
    members.put("MotionChannelCount", 7);
    members.put("ACCELChannelCount", 3);
    members.put("GYROChannelCount", 3);
    members.put("LATENCYChannelCount", 1);
    members.put("MissingValues", "n/a");
    if (!facts.serialNumber().isEmpty()) {
      members.put("DeviceSerialNumber", facts.serialNumber());
    }
    return members;
  }

  private static String channels(UnitFacts facts) {
    List<String> lines = new ArrayList<>();
    lines.add(COLUMNS);
    lines.add("latency\tn/a\tLATENCY\tn/a\ts\tn/a\tn/a\tn/a\tn/a");
    for (String axis : AXES) {
      lines.add(channel("accel", axis, "ACCEL", "m/s^2", facts.accelFullScaleMps2(), facts));
    }
    for (String axis : AXES) {
      lines.add(channel("gyro", axis, "GYRO", "rad/s", facts.gyroFullScaleRadPerS(), facts));
    }
    return String.join("\n", lines) + "\n";
  }

  private static String channel(
      String name, String axis, String type, String units, double fullScale, UnitFacts facts) {
    return String.join(
        "\t",
        name + "_" + axis,
        axis,
        type,
        facts.point().trackedPoint(),
        units,
        placement(facts.point()),
        "sensor",
        Double.isFinite(fullScale) ? Double.toString(fullScale) : "n/a",
        facts.calibrated() ? "applied" : "none");
  }

  private static String placement(BodyPoint point) {
    return switch (point) {
      case PELVIS -> "back of the pelvis, on the sacrum";
      case LEAD_FOREARM -> "lead forearm, just above the wrist";
      case LEAD_HAND -> "back of the lead hand";
      case CLUB_SHAFT -> "club shaft, below the grip";
      case THORAX -> "upper back";
    };
  }
}
