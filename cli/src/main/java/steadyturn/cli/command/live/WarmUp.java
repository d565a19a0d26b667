package steadyturn.cli.command.live;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.cli.output.table.BallAnswer;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Answers made swings to nobody while the first wear steps are done, so that the program is in its
 * stride before the first ball.
 */
public final class WarmUp {

  private static final long SEED = 1;
  private static final int BALLS = 2;
  private static final double RATE_HZ = 200;

  private record Sample(UnitStream unit, int at) {
    double timeS() {
      return unit.timeS(at);
    }
  }

  private WarmUp() {}

  /** Does it beside everything else. */
  static void begin(Teaching teaching) {
    Thread thread = new Thread(() -> run(teaching), "warm-up");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
  }

  /** Does it now. */
  public static void run(Teaching teaching) {
    LessonSpec spec = LessonSpec.standard().withHits(BALLS).withPractices(0).withRateHz(RATE_HZ);
    Recording made = LessonSimulator.simulate(spec, SEED).recording();
    BallVoice toNobody =
        new BallVoice(
            new BallAnswer(made.player().id(), teaching), lines -> lines.forEach(l -> {}));
    try (LiveLesson lesson =
        new LiveLesson(
            made.id(), made.player(), UnaryOperator.identity(), toNobody, Runnable::run)) {
      made.units().forEach(unit -> lesson.unit(unit.facts(), 0));
      made.marks().forEach(lesson::mark);
      inOrder(made).forEach(sample -> hear(sample, lesson));
    }
  }

  private static List<Sample> inOrder(Recording made) {
    List<Sample> samples = new ArrayList<>();
    for (UnitStream unit : made.units()) {
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
