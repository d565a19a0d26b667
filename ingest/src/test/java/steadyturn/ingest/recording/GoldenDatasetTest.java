package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.recording.write.UnitPieces;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A small dataset as bytes: what is written is exactly this, what others may write is read as what
 * it says. Names and columns are those of Motion-BIDS (BIDS 1.9).
 */
@SuppressWarnings({"EnumOrdinal", "StringConcatToTextBlock"}) // the bytes of a table, line by line
class GoldenDatasetTest {

  private static final LocalDateTime START = LocalDateTime.of(2026, 4, 1, 9, 59, 59, 999_998_500);
  private static final Player MIKA =
      new Player(
          "mika",
          Handedness.LEFT,
          OptionalDouble.of(262),
          OptionalDouble.of(148.5),
          OptionalDouble.empty());

  @TempDir Path root;

  private static UnitStream unit(BodyPoint point, double startS, boolean calibrated) {
    double[][] accel = {{1, 1.5}, {-2, Double.NaN}, {9.80665, 9.8}};
    double[][] gyro = {{0.5, 0.25}, {-0.125, 0}, {3, -3}};
    return new UnitStream(
        new UnitFacts(point, "S-" + point.ordinal(), 500, 156.9, 34.9, calibrated),
        new double[] {startS, startS + 0.002},
        accel,
        gyro);
  }

  private static Recording recording() {
    return new Recording(
        "sub-mika_ses-01_task-swing",
        MIKA,
        List.of(unit(BodyPoint.PELVIS, 0, true), unit(BodyPoint.LEAD_HAND, 0.0013456, false)),
        List.of(
            new Mark(0.5, 2, "quiet-stance", "", ""),
            new Mark(3.25, 0, "hit", "7-iron", "a\tlittle\nthin")));
  }

  private String text(String name) throws IOException {
    return Files.readString(root.resolve("sub-mika/ses-01").resolve(name));
  }

  private void write() {
    RecordingWriter.into(root, "Lessons").write(recording(), RunLabel.run("mika", "01", 7), START);
  }

  private static final String PELVIS = "motion/sub-mika_ses-01_task-swing_tracksys-pelvis_run-07_";

  @Test
  void theTablesAreWrittenToTheByte() throws IOException {
    write();
    String expected =
        "0.000000\t1.00000\t-2.00000\t9.80665\t0.500000\t-0.125000\t3.000000\n"
            + "0.002000\t1.50000\tn/a\t9.80000\t0.250000\t0.000000\t-3.000000\n";
    assertThat(text(PELVIS + "motion.tsv")).isEqualTo(expected);
    assertThat(text(PELVIS.replace("pelvis", "leadHand") + "motion.tsv")).isEqualTo(expected);
    assertThat(text(PELVIS + "channels.tsv"))
        .isEqualTo(
            """
            name	component	type	tracked_point	units	placement	reference_frame	full_scale	calibration
            latency	n/a	LATENCY	n/a	s	n/a	n/a	n/a	n/a
            accel_x	x	ACCEL	pelvis	m/s^2	back of the pelvis, on the sacrum	sensor	156.9	applied
            accel_y	y	ACCEL	pelvis	m/s^2	back of the pelvis, on the sacrum	sensor	156.9	applied
            accel_z	z	ACCEL	pelvis	m/s^2	back of the pelvis, on the sacrum	sensor	156.9	applied
            gyro_x	x	GYRO	pelvis	rad/s	back of the pelvis, on the sacrum	sensor	34.9	applied
            gyro_y	y	GYRO	pelvis	rad/s	back of the pelvis, on the sacrum	sensor	34.9	applied
            gyro_z	z	GYRO	pelvis	rad/s	back of the pelvis, on the sacrum	sensor	34.9	applied
            """);
    assertThat(text(PELVIS + "events.tsv"))
        .isEqualTo(
            "onset\tduration\ttrial_type\tclub\tnote\n"
                + "0.500000\t2.000000\tquiet-stance\tn/a\tn/a\n"
                + "3.250000\t0.000000\thit\t7-iron\ta little thin\n");
    assertThat(Files.readString(root.resolve("participants.tsv")))
        .isEqualTo(
            "participant_id\thandedness\tpelvis_width\tpelvis_depth\tstature\n"
                + "sub-mika\tleft\t262\t148.5\tn/a\n");
  }

  @Test
  void samplesThatComeInPiecesAreWrittenAsOneTable() throws IOException {
    // Given: the same recording, each unit's two samples in two pieces. Expect: the same bytes of
    // the table, its rate and its start; and when the last sample was, 3.3456 ms.
    write();
    List<String> names =
        List.of(PELVIS + "motion.tsv", PELVIS + "motion.json", "sub-mika_ses-01_scans.tsv");
    List<String> whole = new ArrayList<>();
    for (String name : names) {
      whole.add(text(name));
    }
    root = root.resolve("again");
    Recording bare = new Recording(recording().id(), MIKA, List.of(), recording().marks());
    List<UnitPieces> units =
        recording().units().stream()
            .map(u -> new UnitPieces(u.facts(), () -> halves(u).iterator()))
            .toList();
    double lastS =
        RecordingWriter.into(root, "Lessons")
            .write(bare, units, RunLabel.run("mika", "01", 7), START);
    assertThat(lastS).isCloseTo(0.0033456, within(1e-12));
    for (int i = 0; i < names.size(); i++) {
      assertThat(text(names.get(i))).isEqualTo(whole.get(i));
    }
  }

  private static List<UnitStream> halves(UnitStream unit) {
    double middleS = unit.timeS(1);
    return List.of(unit.between(0, middleS), unit.between(middleS, 1));
  }

  @Test
  void startTimesAreToldToTheMicrosecond() throws IOException {
    // Given: zero at 9:59:59.9999985, the hand 1.3456 ms later. Expect: microseconds, the hand's
    // own offset rounded to 1346 us and added.
    write();
    assertThat(text("sub-mika_ses-01_scans.tsv"))
        .isEqualTo(
            "filename\tacq_time\n"
                + PELVIS
                + "motion.tsv\t2026-04-01T09:59:59.999998\n"
                + PELVIS.replace("pelvis", "leadHand")
                + "motion.tsv\t2026-04-01T10:00:00.001344\n");
  }

  @Test
  void theSidecarTellsRateCountsAndSerial() throws IOException {
    write();
    String json = text(PELVIS + "motion.json");
    assertThat(json)
        .contains(
            "\"TaskName\" : \"swing\"",
            "\"SamplingFrequency\" : 500.0",
            "\"SamplingFrequencyEffective\" : 500.0",
            "\"TrackingSystemName\" : \"pelvis\"",
            "\"TrackedPointsCount\" : 1",
            "\"MotionChannelCount\" : 7",
            "\"ACCELChannelCount\" : 3",
            "\"GYROChannelCount\" : 3",
            "\"LATENCYChannelCount\" : 1",
            "\"DeviceSerialNumber\" : \"S-0\"",
            "\"MissingValues\" : \"n/a\"");
    assertThat(text(PELVIS.replace("pelvis", "leadHand") + "channels.tsv"))
        .contains(
            "accel_x\tx\tACCEL\tlead_hand\tm/s^2\tback of the lead hand\tsensor\t156.9\tnone");
  }

  @Test
  void whatIsWrittenIsReadBack() {
    write();
    Recording read = RoundTripTest.onlyRun(root).recording();
    UnitStream hand = read.unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(hand.timeS(0)).isCloseTo(0.001346, within(1e-9));
    assertThat(hand.timeS(1)).isCloseTo(0.003346, within(1e-9));
    assertThat(hand.accelColumnMps2(0)).containsExactly(1, 1.5);
    assertThat(hand.accelColumnMps2(1)).containsExactly(-2, Double.NaN);
    assertThat(hand.gyroColumnRadPerS(2)).containsExactly(3, -3);
    assertThat(hand.facts()).isEqualTo(recording().units().get(1).facts());
    assertThat(read.marks().get(1)).isEqualTo(new Mark(3.25, 0, "hit", "7-iron", "a little thin"));
    assertThat(read.player()).isEqualTo(MIKA);
  }

  @Test
  void whatIsThereIsNeverWrittenOver() throws IOException {
    RecordingWriter writer = RecordingWriter.into(root, "Lessons");
    writer.write(recording(), RunLabel.run("mika", "01", 1), START);
    assertThatThrownBy(() -> writer.write(recording(), RunLabel.run("mika", "01", 1), START))
        .hasMessageContaining("run-01 is already there");
    assertThatThrownBy(() -> writer.write(recording(), RunLabel.run("nele", "01", 1), START))
        .hasMessageContaining("a recording of mika under the name of nele");
    writer.write(recording(), RunLabel.run("mika", "01", 2), START);
    assertThat(text("sub-mika_ses-01_scans.tsv").lines()).hasSize(5);
    assertThat(Files.readString(root.resolve("participants.tsv")).lines()).hasSize(2);
  }

  @Test
  void anotherSideOfTheSamePlayerIsRefused() {
    write();
    Player right = Player.unmeasured("mika", Handedness.RIGHT);
    assertThatThrownBy(() -> Participants.add(root, right))
        .hasMessageContaining("sub-mika swings left-handed, the new recording says right-handed");
  }

  private void put(String name, String text) throws IOException {
    Path file = root.resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A dataset of another's making: g, deg/s, ms, other words, CRLF, a byte-order mark. */
  private void others(String side, String point) throws IOException {
    put("dataset_description.json", "{\"Name\": \"x\", \"BIDSVersion\": \"1.9.0\"}");
    put("participants.tsv", "\uFEFFparticipant_id\thandedness\r\nsub-7\t" + side + "\r\n");
    String run = "sub-7/motion/sub-7_task-any_tracksys-imu_";
    put(run + "motion.json", "{\"TaskName\": \"any\", \"SamplingFrequency\": 100}");
    put(
        run + "channels.tsv",
        """
        name	component	type	tracked_point	units
        t	n/a	LATENCY	n/a	ms
        a1	Z	accel	POINT	g
        a2	y	ACCEL	POINT	g
        a3	x	ACCEL	POINT	g
        g1	x	GYRO	POINT	deg/s
        g2	y	GYRO	POINT	deg/s
        g3	z	GYRO	POINT	deg/s
        """
            .replace("POINT", point));
    put(run + "motion.tsv", "5\t1\t2\t3\t90\t0\t-180\r\n15\t1\t2\t3\t90\t0\t-180");
    put(
        run + "events.tsv",
        "onset\tduration\ttrial_type\n2\tn/a\thit\n1\t0.5\taim\nn/a\t1\thit\n3\t-1\thit\n");
  }

  @Test
  void anothersDatasetIsReadAsWhatItSays() throws IOException {
    others("R", "sacrum");
    ReadRun run = RoundTripTest.onlyRun(root);
    UnitStream pelvis = run.recording().unit(BodyPoint.PELVIS).orElseThrow();
    assertThat(pelvis.timeColumnS()).containsExactly(new double[] {0, 0.01}, within(1e-12));
    assertThat(pelvis.accelMps2(0, 0)).isCloseTo(3 * 9.80665, within(1e-12));
    assertThat(pelvis.accelMps2(1, 0)).isCloseTo(2 * 9.80665, within(1e-12));
    assertThat(pelvis.accelMps2(2, 0)).isCloseTo(9.80665, within(1e-12));
    assertThat(pelvis.gyroRadPerS(0, 1)).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(pelvis.gyroRadPerS(2, 1)).isCloseTo(-Math.PI, within(1e-12));
    assertThat(pelvis.facts().nominalRateHz()).isEqualTo(100);
    assertThat(pelvis.facts().accelFullScaleMps2()).isInfinite();
    assertThat(run.recording().player().handed()).isEqualTo(Handedness.RIGHT);
    assertThat(run.recording().marks())
        .containsExactly(new Mark(1, 0.5, "aim", "", ""), new Mark(2, 0, "hit", "", ""));
    assertThat(run.notices()).filteredOn(n -> n.contains("an event needs an onset")).hasSize(2);
  }

  @Test
  void theLeadArmIsTheLeftOneOfARightHandedPlayer() throws IOException {
    others("right", "Left_Hand");
    assertThat(RoundTripTest.onlyRun(root).recording().unit(BodyPoint.LEAD_HAND)).isPresent();
  }

  @Test
  void theLeadArmIsTheRightOneOfALeftHandedPlayer() throws IOException {
    others("left", "right forearm");
    assertThat(RoundTripTest.onlyRun(root).recording().unit(BodyPoint.LEAD_FOREARM)).isPresent();
  }
}
