package steadyturn.analysis.lab.study;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;
import steadyturn.ingest.serial.HostTime;

/**
 * A lesson as units send it and a person notes it, faster than in real time: the bytes of each unit
 * come with the instants at which they would have come.
 */
final class SentLesson {

  private static final int RANGE_G = 16;
  private static final int RANGE_DEG_PER_S = 2000;

  /** Bytes come in blocks so long after the sample, and later by chance, s. */
  private static final double BLOCK_S = 0.01;

  private static final double DELAY_S = 0.002;
  private static final double JITTER_S = 0.02;

  /** Clocks run fast or slow by as much, and units begin up to so much late, s. */
  private static final double SKEW = 50e-6;

  private static final double LATEST_START_S = 2;

  private final Recording lesson;
  private final RandomGenerator draw;

  SentLesson(Recording lesson, RandomGenerator draw) {
    this.lesson = lesson;
    this.draw = draw;
  }

  /** The lesson with what the units tell of themselves, and no more. */
  static Recording asTold(Recording lesson) {
    List<UnitStream> units =
        lesson.units().stream()
            .map(unit -> unit.withFacts(hello(unit).known().facts(unit.point(), 1)))
            .toList();
    return new Recording(lesson.id(), lesson.player(), units, lesson.marks());
  }

  private static UnitHello hello(UnitStream unit) {
    return new UnitHello(
        unit.point().trackedPoint(),
        unit.facts().serialNumber(),
        unit.facts().nominalRateHz(),
        RANGE_G * StandardGravity.MPS2,
        Math.toRadians(RANGE_DEG_PER_S));
  }

  /** Sends it all into a dataset. */
  void into(Path folder) throws IOException {
    double zeroS = HostTime.steadyS() + LATEST_START_S;
    try (LiveRecorder recorder = LiveRecorder.start(folder, lesson.player(), "1")) {
      for (UnitStream unit : lesson.units()) {
        boolean isLate = unit.point() != BodyPoint.PELVIS;
        double fromS = unit.timeS(0) + (isLate ? LATEST_START_S * draw.nextDouble() : 0);
        send(unit.between(fromS, Double.POSITIVE_INFINITY), recorder, zeroS);
      }
      lesson.marks().forEach(mark -> type(mark, recorder, zeroS));
    }
  }

  private void send(UnitStream unit, LiveRecorder recorder, double zeroS) {
    LiveUnit live = new LiveUnit(recorder, new BinaryFrameAdapter(), Optional.empty());
    BinaryFrameEncoder encoder = new BinaryFrameEncoder(RANGE_G, RANGE_DEG_PER_S);
    double wallAheadS = HostTime.wallS() - HostTime.steadyS();
    double skew = SKEW * (2 * draw.nextDouble() - 1);
    double cameS = zeroS + unit.timeS(0);
    double[] accel = new double[3];
    double[] gyro = new double[3];
    live.opened();
    byte[] hello = encoder.hello(hello(unit));
    live.bytes(hello, hello.length, cameS, cameS + wallAheadS);
    int i = 0;
    while (i < unit.size()) {
      double blockEndS = unit.timeS(i) + BLOCK_S;
      double atS = zeroS + blockEndS + DELAY_S + JITTER_S * Math.pow(draw.nextDouble(), 4);
      cameS = Math.max(cameS, atS);
      for (; i < unit.size() && unit.timeS(i) < blockEndS; i++) {
        for (int axis = 0; axis < 3; axis++) {
          accel[axis] = unit.accelMps2(axis, i);
          gyro[axis] = unit.gyroRadPerS(axis, i);
        }
        if (unit.hasForce(i) && unit.hasRate(i)) {
          double deviceS = (unit.timeS(i) - unit.timeS(0)) * (1 + skew) + 10;
          byte[] frame = encoder.sample(i, Math.round(1e6 * deviceS), accel, gyro);
          live.bytes(frame, frame.length, cameS, cameS + wallAheadS);
        }
      }
    }
    live.betterStart();
  }

  /** Steps up to half a second early or late, swings one to three seconds after they are over. */
  private void type(Mark mark, LiveRecorder recorder, double zeroS) {
    boolean isStep = MarkWord.of(mark.trialType()).filter(MarkWord::isStep).isPresent();
    double atS =
        isStep
            ? mark.onsetS() + 0.6 * draw.nextDouble() - 0.5
            : mark.endS() + 1 + 2 * draw.nextDouble();
    recorder.mark(
        new LiveMark(recorder.timeOfDay(zeroS + atS), 0, mark.trialType(), mark.club(), ""));
  }
}
