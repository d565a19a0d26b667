package steadyturn.cli.command.live;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Answers the balls of the bundled lesson to nobody while the first wear steps are done, so that
 * the program is in its stride before the first ball.
 */
public final class WarmUp {

  private static final int BALLS = 2;
  private static final double AFTER_S = 6;

  private record Sample(UnitStream unit, int at) {
    double timeS() {
      return unit.timeS(at);
    }
  }

  private WarmUp() {}

  /** Does it beside everything else. */
  public static void begin(Teaching teaching) {
    Thread thread = new Thread(() -> run(teaching), "warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  /** Does it now; without the bundled lesson the first answer comes a little later. */
  public static void run(Teaching teaching) {
    Path samples = Path.of(System.getProperty("steadyturn.home", ""), "sample-recordings");
    if (Files.isDirectory(samples)) {
      SessionRun run = Archive.open(samples).sessions().get(0).runs().get(0);
      play(RecordingReader.read(run).recording(), teaching);
    }
  }

  private static void play(Recording bundled, Teaching teaching) {
    BallVoice toNobody =
        new BallVoice(new BallAnswer(bundled.player().id(), teaching), lines -> {});
    double untilS =
        bundled.marks().stream()
            .filter(mark -> mark.trialType().equals(MarkWord.HIT.word()))
            .limit(BALLS)
            .mapToDouble(mark -> mark.endS() + AFTER_S)
            .max()
            .orElse(0);
    try (LiveLesson lesson =
        new LiveLesson(
            bundled.id(), bundled.player(), UnaryOperator.identity(), toNobody, Runnable::run)) {
      bundled.units().forEach(unit -> lesson.unit(unit.facts(), 0));
      bundled.marks().forEach(lesson::mark);
      inOrder(bundled).stream()
          .takeWhile(sample -> sample.timeS() < untilS)
          .forEach(sample -> hear(sample, lesson));
    }
  }

  private static List<Sample> inOrder(Recording bundled) {
    List<Sample> samples = new ArrayList<>();
    for (UnitStream unit : bundled.units()) {
      IntStream.range(0, unit.size()).forEach(i -> samples.add(new Sample(unit, i)));
    }
    samples.sort(Comparator.comparingDouble(Sample::timeS));
    return samples;
  }

  private static void hear(Sample sample, LiveLesson lesson) {
    double[] accel = new double[3];
    double[] gyro = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = sample.unit.accelMps2(axis, sample.at);
      gyro[axis] = sample.unit.gyroRadPerS(axis, sample.at);
    }
    lesson.sample(sample.unit.point(), sample.timeS(), accel, gyro);
  }
}
