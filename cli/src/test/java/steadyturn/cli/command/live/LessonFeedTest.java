package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;
import steadyturn.ingest.serial.HostTime;

class LessonFeedTest {

  @TempDir private Path folder;

  @Test
  void aUnitWhoseClockRunsSlowStaysAtItsPlaceOnTheLessonsAxis() throws Exception {
    // Given: a unit at 100 Hz that begins 3 s after the lesson's zero and runs 400 ppm slow for ten
    // minutes, its bytes coming at once. Expect: its newest sample at 603 s, not 0.24 s before.
    // Within 2 ms: its place is told once a second.
    Player player = Player.unmeasured("mika", Handedness.RIGHT);
    try (LiveRecorder recorder = LiveRecorder.start(folder, player, "1");
        LiveLesson lesson =
            new LiveLesson(
                "a",
                player,
                UnaryOperator.identity(),
                new BallVoice(new BallAnswer("mika", TeachingReader.shipped()), lines -> {}))) {
      double zeroS = HostTime.steadyS();
      double wallAheadS = HostTime.wallS() - zeroS;
      LessonFeed feed =
          new LessonFeed(lesson, recorder.timeOfDay(zeroS), (point, timeS, accel, gyro) -> {});
      LiveUnit unit =
          feed.of(new LiveUnit(recorder, new BinaryFrameAdapter(), Optional.empty(), feed));
      BinaryFrameEncoder encoder = new BinaryFrameEncoder(16, 2000);
      byte[] hello = encoder.hello(new UnitHello("pelvis", "T-1", 100, 156, 34));
      unit.opened();
      unit.bytes(hello, hello.length, zeroS + 3, zeroS + 3 + wallAheadS);
      for (int i = 0; i <= 60_000; i++) {
        double atS = zeroS + 3 + 0.01 * i;
        long micros = Math.round(1e6 * (5 + 0.01 * i * (1 - 400e-6)));
        byte[] bytes = encoder.sample(i, micros, new double[] {9.8, 0, 0}, new double[3]);
        unit.bytes(bytes, bytes.length, atS, atS + wallAheadS);
      }
      assertThat(lesson.samples().points()).isEqualTo(List.of(BodyPoint.PELVIS));
      assertThat(lesson.samples().heardToS(603)).isCloseTo(603, within(0.002));
      assertThat(unit.latencyS()).isCloseTo(599.76, within(0.001));
    }
  }
}
