package steadyturn.ingest.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.serial.HostTime;

/** Marks ride on the clock of the samples, whatever happens to the time of day. */
class MarksOnTheSamplesClockTest {

  @TempDir private Path folder;

  /** A time of day that someone sets anew. */
  private static final class SetClock extends Clock {

    private volatile Duration ahead = Duration.ZERO;

    @Override
    public ZoneId getZone() {
      return ZoneId.systemDefault();
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException("not asked for");
    }

    @Override
    public Instant instant() {
      return Instant.now().plus(ahead);
    }
  }

  private static final Player PLAYER = Player.unmeasured("mika", Handedness.RIGHT);

  /** Records a still unit for some seconds of its own clock, begun just now. */
  private static void send(LiveRecorder recorder) {
    UnitFacts facts = UnitFacts.plain(BodyPoint.PELVIS, 100);
    LiveTrack track = recorder.unit(facts, recorder.timeOfDay(HostTime.steadyS())).orElseThrow();
    for (int i = 0; i < 1000; i++) {
      track.sample(i / 100.0, new double[] {9.8, 0, 0}, new double[3]);
    }
  }

  private List<Mark> marks() throws IOException {
    return RecordingReader.readMarks(Archive.open(folder).sessions().get(0).runs().get(0));
  }

  @Test
  void aMarkTakenBackIsInNoFile() throws Exception {
    // Given: three marks, the second taken back once it was written, and a fourth after it; whoever
    // listens hears of it. Expect: three in the file, though their number is as before.
    List<LiveMark> back = new ArrayList<>();
    try (LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "1")) {
      recorder.tellMarks(mark -> {}, back::add);
      send(recorder);
      recorder.markNow("club", "7-iron", "");
      LiveMark wrong = recorder.markNow("club", "driver", "");
      recorder.markNow("note", "", "one");
      HostTime.pause(500);
      assertThat(marks()).hasSize(3);
      recorder.unmark(wrong);
      recorder.unmark(wrong);
      recorder.markNow("note", "", "two");
      assertThat(back).containsExactly(wrong);
    }
    assertThat(marks())
        .extracting(m -> m.club() + m.note())
        .containsExactly("7-iron", "one", "two");
  }

  @Test
  void theOnlyMarkTakenBackLeavesNone() throws Exception {
    try (LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "1")) {
      send(recorder);
      LiveMark only = recorder.markNow("hit", "", "");
      HostTime.pause(500);
      recorder.unmark(only);
      HostTime.pause(500);
      assertThat(marks()).isEmpty();
      assertThat(recorder.marks()).isZero();
    }
    assertThat(marks()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 3600, -3600, 86_400 * 40})
  void aTimeOfDaySetAnewMovesNoMark(long aheadS) throws Exception {
    // Given: the time of day set ahead or back once the recording runs; then a mark of this moment,
    // and one left by another process, 2 s back by the new time. Expect: both where they were by
    // the
    // samples. Within 1.5 s: the box is looked into four times a second, on a busy machine.
    SetClock wall = new SetClock();
    try (LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "1", new Disk() {}, wall)) {
      send(recorder);
      wall.ahead = Duration.ofSeconds(aheadS);
      recorder.markNow("club", "7 wood", "");
      LocalDateTime twoBack = LocalDateTime.now(wall).minusSeconds(2);
      MarkBox.leave(folder, new LiveMark(twoBack, 0, "note", "", "left behind"));
      double untilS = HostTime.steadyS() + 5;
      while (recorder.marks() < 2 && HostTime.steadyS() < untilS) {
        HostTime.pause(20);
      }
    }
    List<Mark> marks = marks();
    assertThat(marks).extracting(Mark::trialType).containsExactly("note", "club");
    assertThat(marks.get(0).onsetS()).isCloseTo(-2, within(1.5));
    assertThat(marks.get(1).onsetS()).isCloseTo(0, within(1.5));
    assertThat(marks.get(1).club()).isEqualTo("7 wood");
  }

  @Test
  void whatWasLeftBeforeTheRecorderStartedIsNoMarkOfThisLesson() throws Exception {
    // Given: a box left over from an earlier recording. Expect: none of it here.
    MarkBox.leave(
        folder, new LiveMark(LocalDateTime.now(ZoneId.systemDefault()), 0, "hit", "", ""));
    try (LiveRecorder recorder = LiveRecorder.start(folder, PLAYER, "1")) {
      send(recorder);
      recorder.markNow("bow", "", "");
    }
    assertThat(marks()).extracting(Mark::trialType).containsExactly("bow");
    assertThat(Files.exists(folder.resolve("sub-mika"))).isTrue();
  }
}
