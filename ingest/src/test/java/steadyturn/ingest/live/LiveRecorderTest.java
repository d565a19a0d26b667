package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class LiveRecorderTest {

  private static final Player PLAYER = Player.unmeasured("mika", Handedness.LEFT);
  private final LocalDateTime start =
      LocalDateTime.now(ZoneId.systemDefault()).withNano(123_456_000);

  @TempDir private Path root;

  private static void send(LiveTrack track, UnitStream unit, int from, int to) {
    for (int i = from; i < to; i++) {
      double[] accel = {unit.accelMps2(0, i), unit.accelMps2(1, i), unit.accelMps2(2, i)};
      double[] gyro = {unit.gyroRadPerS(0, i), unit.gyroRadPerS(1, i), unit.gyroRadPerS(2, i)};
      track.sample(unit.timeS(i), accel, gyro);
    }
  }

  private Recording readBack() {
    return RecordingReader.read(Archive.open(root).sessions().get(0).runs().get(0)).recording();
  }

  @Test
  void whatWasSentIsReadBackWithUnitsStartsAndMarks() throws IOException {
    UnitStream pelvis = MadeStream.numbered(BodyPoint.PELVIS, 200, 3000);
    UnitStream hand = MadeStream.numbered(BodyPoint.LEAD_HAND, 500, 3000);
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      LiveTrack ofHand = recorder.unit(hand.facts(), start.plusNanos(2_000_000)).orElseThrow();
      send(ofHand, hand, 0, 3000);
      recorder.mark(new LiveMark(start.plusSeconds(3), 0, "hit", "7-iron", "thin"));
      LiveTrack ofPelvis = recorder.unit(pelvis.facts(), start).orElseThrow();
      send(ofPelvis, pelvis, 0, 3000);
      MarkBox.leave(root, new LiveMark(start.plusSeconds(1), 2, "quiet-stance", "", ""));
    }
    Recording read = readBack();
    assertThat(read.player().handed()).isEqualTo(Handedness.LEFT);
    UnitStream readHand = read.unit(BodyPoint.LEAD_HAND).orElseThrow();
    assertThat(readHand.size()).isEqualTo(3000);
    assertThat(readHand.facts().serialNumber()).isEqualTo("V-7");
    // Within 1 us: start times are written to the microsecond.
    assertThat(readHand.timeS(0)).isCloseTo(0.002, within(1e-6));
    for (int i = 0; i < 3000; i++) {
      assertThat(MadeStream.numberOf(readHand, i)).isEqualTo(i);
    }
    assertThat(read.marks()).hasSize(2);
    assertThat(read.marks().get(0).trialType()).isEqualTo("quiet-stance");
    assertThat(read.marks().get(1).onsetS()).isCloseTo(3, within(1e-6));
    assertThat(read.marks().get(1).club()).isEqualTo("7-iron");
  }

  @Test
  void twoRecordingsOfOneLessonAreTwoRuns() throws IOException {
    for (int run = 1; run <= 2; run++) {
      try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
        UnitStream unit = MadeStream.numbered(BodyPoint.PELVIS, 200, 400);
        send(recorder.unit(unit.facts(), start.plusMinutes(run)).orElseThrow(), unit, 0, 400);
      }
    }
    assertThat(Archive.open(root).sessions().get(0).runs()).hasSize(2);
  }

  @Test
  void aFullDiskEndsTheRecordingWithOneLineAndKeepsWhatIsThere() throws Exception {
    BadDisk disk = new BadDisk();
    LiveTrack track;
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01", disk)) {
      UnitStream unit = MadeStream.numbered(BodyPoint.PELVIS, 200, 2000);
      track = recorder.unit(unit.facts(), start).orElseThrow();
      send(track, unit, 0, 1000);
      waitFor(track);
      disk.freeBytes = 10_000_000;
      long untilMs = System.currentTimeMillis() + 5000;
      while (recorder.stopped().isEmpty() && System.currentTimeMillis() < untilMs) {
        send(track, unit, 1000, 1001);
        Thread.sleep(20);
      }
      assertThat(recorder.stopped().orElseThrow())
          .isEqualTo("the disk is full; the recording was ended with what is on the disk");
    }
    assertThat(readBack().units().get(0).size()).isGreaterThanOrEqualTo(1000);
    assertThat((long) readBack().units().get(0).size()).isEqualTo(track.kept());
    assertThat(track.samples()).isGreaterThan(track.kept());
  }

  private static void waitFor(LiveTrack track) throws InterruptedException {
    long untilMs = System.currentTimeMillis() + 5000;
    while (!track.hasBegun() && System.currentTimeMillis() < untilMs) {
      Thread.sleep(20);
    }
    Thread.sleep(500);
  }

  @Test
  void aNearlyFullDiskIsToldBeforeAnythingIsWritten() {
    assertThatThrownBy(() -> LiveRecorder.start(root, PLAYER, "01", new BadDisk(1000)))
        .isInstanceOf(RecordingException.class)
        .hasMessageContaining("nearly full");
    assertThat(root.resolve("participants.tsv")).doesNotExist();
  }

  @Test
  void twoRecordersDoNotWriteIntoOneDataset() throws IOException {
    try (LiveRecorder first = LiveRecorder.start(root, PLAYER, "01")) {
      assertThatThrownBy(() -> LiveRecorder.start(root, PLAYER, "01"))
          .isInstanceOf(RecordingException.class)
          .hasMessageContaining("another program is recording");
      assertThat(first.stopped()).isEmpty();
    }
    LiveRecorder.start(root, PLAYER, "01").close();
  }

  @Test
  void theDatasetIsWholeWhileItIsStillBeingRecorded() throws Exception {
    try (LiveRecorder recorder = LiveRecorder.start(root, PLAYER, "01")) {
      UnitStream unit = MadeStream.numbered(BodyPoint.PELVIS, 200, 2000);
      LiveTrack track = recorder.unit(UnitFacts.plain(BodyPoint.PELVIS, 500), start).orElseThrow();
      send(track, unit, 0, 500);
      waitFor(track);
      assertThat(readBack().units().get(0).size()).isEqualTo(500);
      track.setFacts(unit.facts());
      track.setStartedAt(start.plusNanos(5_000_000));
      send(track, unit, 500, 2000);
      waitFor(track);
      assertThat(readBack().units().get(0).facts()).isEqualTo(unit.facts());
      // The better start replaces the first one: 123.456 ms and 5 ms more.
      Path scans = root.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv");
      assertThat(Files.readString(scans)).contains(".128456").doesNotContain(".123456");
      try (var files = Files.walk(root)) {
        assertThat(files.map(f -> f.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
      }
    }
  }

  @Test
  void aLineOfMarksThatIsNotYetWholeWaits() throws IOException {
    MarkBox box = MarkBox.emptied(root);
    MarkBox.leave(root, new LiveMark(start, 0, "hit", "driver", "two\twords\nhere"));
    Path file = root.resolve(".steadyturn-marks.tsv");
    Files.writeString(file, Files.readString(file) + "2026-04-01T10:00\t0");
    assertThat(box.take())
        .hasSize(1)
        .first()
        .extracting(LiveMark::note)
        .isEqualTo("two words here");
    Files.writeString(file, Files.readString(file) + "\tpractice\t\t\n");
    assertThat(box.take()).extracting(LiveMark::trialType).containsExactly("practice");
    assertThat(box.take()).isEmpty();
  }
}
