package steadyturn.analysis.lab.study;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.ingest.lab.Speech;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.UnitFaults;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.live.PortPlace;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.serial.HostTime;

/**
 * A lesson as units send it and a person notes it, faster than in real time: the bytes of each unit
 * come with the instants at which they would have come.
 */
public final class SentLesson {

  private static final byte[] NOTHING = new byte[0];

  private static final int RANGE_DEG_PER_S = 2000;

  /** Bytes come in blocks so long after the sample, and later by chance, s. */
  private static final double BLOCK_S = 0.01;

  private static final double DELAY_S = 0.002;
  private static final double JITTER_S = 0.02;

  /** Clocks run fast or slow by as much, and units begin up to so much late, s. */
  private static final double SKEW = 50e-6;

  private static final double LATEST_START_S = 2;

  /** Units that must be set up are switched on so long before the lesson, s. */
  public static final double BEFORE_S = 6;

  /** A cable comes out so long after a ball, s; and for so long. */
  private static final double AFTER_BALL_S = 1.5;

  private static final double OUT_S = 1;

  private final Recording lesson;
  private final RandomGenerator draw;
  private final Speech speech;

  SentLesson(Recording lesson, RandomGenerator draw, Speech speech) {
    this.lesson = lesson;
    this.draw = draw;
    this.speech = speech;
  }

  /** The unit lying on the table before the lesson too, by its first second again and again. */
  public static UnitStream lyingBefore(UnitStream unit) {
    int second = TimeAxis.indexAt(unit::timeS, unit.size(), unit.timeS(0) + 1);
    int before = (int) Math.round(BEFORE_S * second);
    int n = unit.size() + before;
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int k = 0; k < n; k++) {
      int i = k < before ? k % second : k - before;
      timeS[k] = k < before ? unit.timeS(0) + (k - before) / (double) second : unit.timeS(i);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][k] = unit.accelMps2(axis, i);
        gyro[axis][k] = unit.gyroRadPerS(axis, i);
      }
    }
    return new UnitStream(unit.facts(), timeS, accel, gyro);
  }

  /** When the cable of a unit that is set up comes out: after a ball, another one for each unit. */
  @SuppressWarnings("EnumOrdinal") // only to draw differently
  public static List<UnitFaults.Stretch> unplugged(Recording lesson, UnitStream unit) {
    List<Mark> balls =
        lesson.marks().stream()
            .filter(m -> MarkWord.of(m.trialType()).filter(MarkWord::isStep).isEmpty())
            .toList();
    double fromS = balls.get(unit.point().ordinal() % balls.size()).endS() + AFTER_BALL_S;
    return List.of(new UnitFaults.Stretch(fromS, fromS + OUT_S));
  }

  /** The lesson with what the units tell of themselves, and no more. */
  static Recording asTold(Recording lesson, Speech speech) {
    List<UnitStream> units =
        lesson.units().stream()
            .map(unit -> unit.withFacts(hello(unit, speech).known().facts(unit.point(), 1)))
            .toList();
    return new Recording(lesson.id(), lesson.player(), units, lesson.marks());
  }

  private static UnitHello hello(UnitStream unit, Speech speech) {
    return new UnitHello(
        unit.point().trackedPoint(),
        unit.facts().serialNumber(),
        unit.facts().nominalRateHz(),
        speech.accelRangeG() * StandardGravity.MPS2,
        Math.toRadians(RANGE_DEG_PER_S));
  }

  /** Sends it all into a dataset. */
  void into(Path folder) throws IOException {
    double zeroS = HostTime.steadyS() + LATEST_START_S + BEFORE_S;
    try (LiveRecorder recorder = LiveRecorder.start(folder, lesson.player(), "1")) {
      for (UnitStream unit : lesson.units()) {
        boolean isLate = unit.point() != BodyPoint.PELVIS && !speech.isSetUp();
        double fromS = unit.timeS(0) + (isLate ? LATEST_START_S * draw.nextDouble() : 0);
        send(unit.between(fromS, Double.POSITIVE_INFINITY), recorder, zeroS);
      }
      lesson.marks().forEach(mark -> type(mark, recorder, zeroS));
    }
  }

  private void send(UnitStream sent, LiveRecorder recorder, double zeroS) {
    UnitStream unit = speech.isSetUp() ? lyingBefore(sent) : sent;
    double rateHz = unit.facts().nominalRateHz();
    LiveUnit live =
        new LiveUnit(
            recorder,
            speech.adapter(rateHz),
            Optional.of(unit.point()),
            new PortPlace(0, speech.isSetUp()),
            (point, timeS, accel, gyro) -> {});
    UnitEncoder encoder = speech.encoder();
    List<UnitFaults.Stretch> outs = speech.isSetUp() ? unplugged(lesson, sent) : List.of();
    double wallAheadS = HostTime.wallS() - HostTime.steadyS();
    double skew = SKEW * (2 * draw.nextDouble() - 1);
    double cameS = zeroS + unit.timeS(0);
    double[] accel = new double[3];
    double[] gyro = new double[3];
    boolean isOut = true;
    int i = 0;
    while (i < unit.size()) {
      double blockEndS = unit.timeS(i) + BLOCK_S;
      double atS = zeroS + blockEndS + DELAY_S + JITTER_S * Math.pow(draw.nextDouble(), 4);
      cameS = Math.max(cameS, atS);
      boolean isOutNow = isOut(outs, unit.timeS(i));
      if (isOutNow && !isOut) {
        live.gone("unplugged");
        encoder.powerOff();
      } else if (!isOutNow && isOut) {
        live.opened();
        pass(encoder.hello(hello(unit, speech)), live, cameS, wallAheadS);
      }
      isOut = isOutNow;
      pass(isOut ? NOTHING : encoder.heard(live.toSend(cameS)), live, cameS, wallAheadS);
      for (; i < unit.size() && unit.timeS(i) < blockEndS; i++) {
        for (int axis = 0; axis < 3; axis++) {
          accel[axis] = unit.accelMps2(axis, i);
          gyro[axis] = unit.gyroRadPerS(axis, i);
        }
        boolean isSent = !isOut && unit.hasForce(i) && unit.hasRate(i);
        if (isSent && encoder.sends(i, rateHz)) {
          double deviceS = (unit.timeS(i) - unit.timeS(0)) * (1 + skew) + 10;
          byte[] frame = encoder.sample(i, Math.round(1e6 * deviceS), accel, gyro);
          pass(frame, live, cameS, wallAheadS);
        }
      }
    }
    live.ended();
    live.betterStart();
  }

  private static boolean isOut(List<UnitFaults.Stretch> outs, double timeS) {
    return outs.stream().anyMatch(out -> out.holds(timeS));
  }

  private static void pass(byte[] bytes, LiveUnit live, double cameS, double wallAheadS) {
    if (bytes.length > 0) {
      live.bytes(bytes, bytes.length, cameS, cameS + wallAheadS);
    }
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
