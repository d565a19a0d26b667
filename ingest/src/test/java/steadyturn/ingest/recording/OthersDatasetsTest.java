package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Datasets as others write them. The layout follows the public bids-examples of Motion-BIDS (folder
 * motion_systemvalidation: one table of many inertial units, columns of the channels file in
 * another order, camel-case body words, no LATENCY, no session folder, start times in UTC); numbers
 * are ours.
 */
class OthersDatasetsTest {

  @TempDir Path root;

  @BeforeEach
  void writeTheDataset() {
    write("dataset_description.json", "{\"Name\": \"walks\", \"BIDSVersion\": \"1.8.0\"}");
    write("participants.tsv", "participant_id\tage\thandedness\nsub-pp002\t31\tR\n");
    write(
        "sub-pp002/motion/sub-pp002_task-backwards_tracksys-imu_channels.tsv",
        "name\ttype\tunits\tsampling_frequency\ttracked_point\tcomponent\tstatus\n"
            + channels("head", "ACCEL", "m/s^2", "good")
            + channels("pelvis", "ACCEL", "m/s^2", "good")
            + channels("leftForeArm", "ACCEL", "m/s^2", "good")
            + channels("rightForeArm", "ACCEL", "m/s^2", "good")
            + channels("pelvis", "GYRO", "deg/s", "good")
            + channels("leftForeArm", "GYRO", "deg/s", "good")
            + channels("rightForeArm", "GYRO", "deg/s", "good")
            + channels("pelvis", "MAGN", "T", "good"));
    write(
        "sub-pp002/motion/sub-pp002_task-backwards_tracksys-imu_motion.json",
        "{\"TaskName\": \"backwards\", \"SamplingFrequency\": 200,"
            + " \"SamplingFrequencyEffective\": 199.9058823529412}");
    StringBuilder table = new StringBuilder();
    for (int line = 0; line < 5; line++) {
      for (int column = 0; column < 24; column++) {
        table.append(column == 0 ? "" : "\t").append(100 * line + column).append("e-1");
      }
      table.append('\n');
    }
    write("sub-pp002/motion/sub-pp002_task-backwards_tracksys-imu_motion.tsv", table.toString());
  }

  private static String channels(String point, String type, String units, String status) {
    StringBuilder lines = new StringBuilder();
    for (String axis : List.of("x", "y", "z")) {
      lines.append(
          String.join("\t", point + type + axis, type, units, "199.9", point, axis, status));
      lines.append('\n');
    }
    return lines.toString();
  }

  private void write(String name, String text) {
    Path file = root.resolve(name);
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  @Test
  void oneTableOfManyUnitsGivesOneStreamForEachKnownPoint() {
    // Given: a right-handed player, four units in one table, head and right forearm of no use.
    // Expect: pelvis and lead (left) forearm; values from their own columns: accel of the pelvis in
    // columns 4 to 6, its rate in 13 to 15, in deg/s; time counted at the effective rate.
    ReadRun run = RoundTripTest.onlyRun(root);
    Recording recording = run.recording();
    assertThat(recording.units().stream().map(UnitStream::point))
        .containsExactly(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM);
    UnitStream pelvis = recording.units().get(0);
    assertThat(pelvis.accelMps2(0, 2)).isCloseTo(20.3, within(1e-12));
    assertThat(pelvis.gyroRadPerS(2, 4)).isCloseTo(Math.toRadians(41.4), within(1e-12));
    assertThat(pelvis.timeS(4)).isCloseTo(4 / 199.9058823529412, within(1e-12));
    assertThat(recording.units().get(1).accelMps2(1, 0)).isCloseTo(0.7, within(1e-12));
  }

  @Test
  void whatHasNoUseIsNamedNotRefused() {
    assertThat(RoundTripTest.onlyRun(root).notices())
        .anyMatch(n -> n.contains("body points left out") && n.contains("head, rightForeArm"))
        .anyMatch(n -> n.contains("channels left out") && n.contains("MAGN"));
  }

  @Test
  void anOpticalSystemBesideTheUnitsIsPassedOver() {
    // Given: a second tracking system with positions only. Expect: the units are read as before.
    write(
        "sub-pp002/motion/sub-pp002_task-backwards_tracksys-omc_channels.tsv",
        "name\tcomponent\ttype\ttracked_point\tunits\np_x\tx\tPOS\tpelvis\tmm\nq\tquat_x\tORNT\t"
            + "pelvis\tn/a\n");
    write("sub-pp002/motion/sub-pp002_task-backwards_tracksys-omc_motion.tsv", "1\t0\n2\t0\n");
    write(
        "sub-pp002/motion/sub-pp002_task-backwards_tracksys-omc_motion.json",
        "{\"TaskName\": \"backwards\", \"SamplingFrequency\": 200}");
    assertThat(RoundTripTest.onlyRun(root).recording().units()).hasSize(2);
  }

  @Test
  void aChannelMarkedBadTakesItsUnitOutAndIsNamed() {
    // Given: gyro y of the forearm is bad. Expect: the forearm is left out, as attitude needs all
    // three; the pelvis stays.
    Path channels =
        root.resolve("sub-pp002/motion/sub-pp002_task-backwards_tracksys-imu_channels.tsv");
    write(
        root.relativize(channels).toString(),
        Broken.text(channels)
            .replace(
                "leftForeArmGYROy\tGYRO\tdeg/s\t199.9\tleftForeArm\ty\tgood",
                "leftForeArmGYROy\tGYRO\tdeg/s\t199.9\tleftForeArm\ty\tbad"));
    ReadRun run = RoundTripTest.onlyRun(root);
    assertThat(run.recording().units()).hasSize(1);
    assertThat(run.notices())
        .anyMatch(
            n ->
                n.endsWith(
                    "lead_forearm left out: a unit needs all six channels and lacks GYRO y (marked"
                        + " bad: leftForeArmGYROy)."));
  }

  @Test
  void sidecarsInTheFoldersAboveSpeakForTheTablesBelow() throws IOException {
    // Given: channels and motion sidecars at the top of the dataset, for the task; the near motion
    // sidecar only tells the rate. Expect: both are found, near members win over far ones.
    Path folder = root.resolve("sub-pp002/motion");
    Files.move(
        folder.resolve("sub-pp002_task-backwards_tracksys-imu_channels.tsv"),
        root.resolve("task-backwards_channels.tsv"));
    write(
        "task-backwards_motion.json",
        "{\"DeviceSerialNumber\": \"17\", \"SamplingFrequency\": 1,"
            + " \"AccelFullScale\": 156.9, \"GyroFullScale\": 34.9}");
    UnitStream pelvis = RoundTripTest.onlyRun(root).recording().units().get(0);
    assertThat(pelvis.facts().serialNumber()).isEqualTo("17");
    assertThat(pelvis.facts().nominalRateHz()).isEqualTo(200);
    assertThat(pelvis.facts().accelFullScaleMps2()).isEqualTo(156.9);
  }

  @Test
  void startTimesWithAZoneAreOneClock() {
    // Given: two tables of one unit each, started 1.25 s apart, one told in UTC, the other an hour
    // ahead of it. Expect: the forearm begins 1.25 s before the pelvis; within 1e-9 s.
    List<String> scans = new ArrayList<>(List.of("filename\tacq_time"));
    for (String unit : List.of("pelvis", "leftForeArm")) {
      String name = "motion/sub-pp002_task-range_tracksys-" + unit;
      write("sub-pp002/" + name + "_motion.tsv", "0\t0\t9.8\t0\t0\t0\n".repeat(400));
      write(
          "sub-pp002/" + name + "_channels.tsv",
          "name\ttype\tunits\tsampling_frequency\ttracked_point\tcomponent\tstatus\n"
              + channels(unit, "ACCEL", "m/s^2", "good")
              + channels(unit, "GYRO", "rad/s", "good"));
      write("sub-pp002/" + name + "_motion.json", "{\"SamplingFrequency\": 200}");
      scans.add(
          name
              + "_motion.tsv\t"
              + (unit.equals("pelvis")
                  ? "2022-12-05T19:23:27.866Z"
                  : "2022-12-05T20:23:26.616000+01:00"));
    }
    write("sub-pp002/sub-pp002_scans.tsv", String.join("\n", scans) + "\n");
    SessionRun run =
        Archive.open(root).sessions().get(0).runs().stream()
            .filter(r -> r.id().contains("task-range"))
            .findFirst()
            .orElseThrow();
    Recording recording = RecordingReader.read(run).recording();
    assertThat(recording.unit(BodyPoint.PELVIS).orElseThrow().timeS(0)).isZero();
    assertThat(recording.unit(BodyPoint.LEAD_FOREARM).orElseThrow().timeS(0))
        .isCloseTo(-1.25, within(1e-9));
  }
}
