package steadyturn.analysis.lab.mistake;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** What a broken sensor, link or program does to single samples, and late hands to marks. */
final class WrongSamples {

  /** Noise of a dead axis, rad/s. */
  private static final double NOISE_RAD_PER_S = 0.002;

  /** Bits that fell make values like these, m/s^2 and rad/s. */
  private static final double WILD_MPS2 = 60;

  private static final double WILD_RAD_PER_S = 15;

  private WrongSamples() {}

  /** One axis of the gyroscope shows its noise only. */
  static UnitStream dead(UnitStream u, int axis, RandomGenerator draw) {
    double[][] gyro = WrongUnit.gyro(u);
    gyro[axis] =
        IntStream.range(0, u.size())
            .mapToDouble(i -> NOISE_RAD_PER_S * draw.nextGaussian())
            .toArray();
    return WrongUnit.columns(u, WrongUnit.accel(u), gyro);
  }

  /** One axis of the accelerometer gives the same value all the time. */
  static UnitStream accelStuck(UnitStream u, int axis) {
    double[][] accel = WrongUnit.accel(u);
    double[] same = new double[u.size()];
    Arrays.fill(same, accel[axis][u.size() / 2]);
    accel[axis] = same;
    return WrongUnit.columns(u, accel, WrongUnit.gyro(u));
  }

  /** Now and then one axis of each sensor shows something far off for one sample. */
  static UnitStream wild(UnitStream u, RandomGenerator draw, double part) {
    double[][] accel = WrongUnit.accel(u);
    double[][] gyro = WrongUnit.gyro(u);
    for (int i = 0; i < u.size(); i++) {
      if (draw.nextDouble() < part) {
        accel[draw.nextInt(3)][i] = draw.nextBoolean() ? WILD_MPS2 : -WILD_MPS2;
        gyro[draw.nextInt(3)][i] = draw.nextBoolean() ? WILD_RAD_PER_S : -WILD_RAD_PER_S;
      }
    }
    return WrongUnit.columns(u, accel, gyro);
  }

  /** A unit that measures half as often as it sends. */
  static UnitStream twice(UnitStream u) {
    return picked(u, IntStream.range(0, u.size()).map(i -> i - i % 2).toArray(), u.timeColumnS());
  }

  /** After the middle every second sample is not sent, as of a unit that saves its battery. */
  static UnitStream halfRateLater(UnitStream u) {
    int half = u.size() / 2;
    int[] sent = IntStream.range(0, u.size()).filter(i -> i < half || i % 2 == 0).toArray();
    return picked(u, sent, Arrays.stream(sent).mapToDouble(u::timeS).toArray());
  }

  private static UnitStream picked(UnitStream u, int[] samples, double[] timesS) {
    double[][] columns = new double[6][];
    Arrays.setAll(
        columns,
        channel -> {
          double[] column = u.column(channel);
          return Arrays.stream(samples).mapToDouble(i -> column[i]).toArray();
        });
    return new UnitStream(
        u.facts(), timesS, Arrays.copyOfRange(columns, 0, 3), Arrays.copyOfRange(columns, 3, 6));
  }

  /** All marks so late, as typed when there is time for it. */
  static Recording marksLate(Recording sound, double byS) {
    List<Mark> marks =
        sound.marks().stream()
            .map(m -> new Mark(m.onsetS() + byS, m.durationS(), m.trialType(), m.club(), m.note()))
            .toList();
    return sound.with(marks);
  }
}
