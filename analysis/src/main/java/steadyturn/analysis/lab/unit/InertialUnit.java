package steadyturn.analysis.lab.unit;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit that samples a true motion with its own errors and clock. Order of effects: low-pass
 * filter of the chip (Butterworth, second order, run at 1000 Hz and more), matrix, bias (with
 * wander), dependence of the rate on acceleration, white noise, mirror, full scale, 16-bit steps,
 * loss, jitter of the time stamps. The sampling itself is even; only the stamps jitter.
 *
 * @param facts what the stream says of itself
 * @param jitterS standard deviation of a time stamp, s
 * @param lossPct samples lost, percent, in bursts of three on average
 * @param lowPassHz where the chip's filter lets half the power through; 0 for none
 * @param mirrored the motion given is that of a right-handed player; show its mirror image in the
 *     vertical plane of the target line, unit and errors mirrored alike (unit axes x and z lie in
 *     the mirrored limb as they do in the other: y changes sign)
 */
public record InertialUnit(
    UnitFacts facts,
    UnitErrors errors,
    UnitClock clock,
    double jitterS,
    double lossPct,
    double lowPassHz,
    boolean mirrored) {

  private static final double WANDER_CORRELATION_S = 100;
  private static final int WANDER_EVERY = 50;
  private static final double LOST_TOGETHER = 3;

  /** Samples the path from the clock's start to a true time. */
  public UnitStream record(UnitPath path, double untilS, RandomGenerator random) {
    int n = samples(untilS);
    double[][] values = new Sampling(path, random).next(n);
    double[] timeS = stamps(n, random);
    return keep(keptAfterLoss(n, random), timeS, values);
  }

  /**
   * The same samples in pieces, each made when it is asked for, so that hours of them are never in
   * memory at once.
   *
   * @param random the same generator at every call
   * @param most so many samples a piece; less where some are lost
   */
  public Iterator<UnitStream> pieces(
      UnitPath path, double untilS, Supplier<RandomGenerator> random, int most) {
    int n = samples(untilS);
    if (n <= most) {
      return List.of(record(path, untilS, random.get())).iterator();
    }
    RandomGenerator behindValues = random.get();
    skip(behindValues, Sampling.draws(n));
    double[] timeS = stamps(n, behindValues);
    BitSet kept = keptAfterLoss(n, behindValues);
    Sampling sampling = new Sampling(path, random.get());
    return IntStream.iterate(0, from -> from < n, from -> from + most)
        .mapToObj(
            from -> {
              int to = Math.min(n, from + most);
              double[] partS = Arrays.copyOfRange(timeS, from, to);
              return keep(kept.get(from, to), partS, sampling.next(to - from));
            })
        .iterator();
  }

  /** Leaves out normal numbers of a fresh generator, which makes two of each two even ones. */
  private static void skip(RandomGenerator random, long normal) {
    for (long even = normal / 2 * 2; even > 0; even--) {
      random.nextDouble();
    }
    if (normal % 2 == 1) {
      random.nextGaussian();
    }
  }

  private double periodS() {
    return 1 / (facts.nominalRateHz() * (1 + clock.skew()));
  }

  private int samples(double untilS) {
    return (int) Math.floor((untilS - clock.startS()) / periodS()) + 1;
  }

  /** What the unit shows, sample after sample. */
  private final class Sampling {
    private final UnitPath felt;
    private final RandomGenerator random;
    private final double periodS = periodS();
    private final double[] wander = new double[3];
    private int k;

    Sampling(UnitPath path, RandomGenerator random) {
      this.felt = lowPassHz > 0 ? new LowPass(path, lowPassHz, periodS) : path;
      this.random = random;
    }

    /** How many normal numbers so many samples take. */
    static long draws(long samples) {
      return 6 * samples + 3 * ((samples + WANDER_EVERY - 1) / WANDER_EVERY);
    }

    /** The next samples: six columns, acceleration x, y, z and rate x, y, z. */
    double[][] next(int samples) {
      double perRoot = Math.sqrt(facts.nominalRateHz() / 2);
      double[] force = new double[3];
      double[] rate = new double[3];
      double[][] out = new double[6][samples];
      for (int at = 0; at < samples; at++, k++) {
        felt.feel(clock.startS() + k * periodS, force, rate);
        if (k % WANDER_EVERY == 0) {
          wander();
        }
        for (int i = 0; i < 3; i++) {
          double a =
              row(errors.accelMatrix()[i], force)
                  + errors.accelBiasMps2()[i]
                  + errors.accelNoiseMps2RtHz() * perRoot * random.nextGaussian();
          double w =
              row(errors.gyroMatrix()[i], rate)
                  + row(errors.gyroPerAccel()[i], force)
                  + errors.gyroBiasRadPerS()[i]
                  + wander[i]
                  + errors.gyroNoiseRadPerSRtHz() * perRoot * random.nextGaussian();
          out[i][at] = shown(mirrored && i == 1 ? -a : a, facts.accelFullScaleMps2());
          out[3 + i][at] = shown(mirrored && i != 1 ? -w : w, facts.gyroFullScaleRadPerS());
        }
      }
      return out;
    }

    private void wander() {
      double keep = Math.exp(-WANDER_EVERY * periodS / WANDER_CORRELATION_S);
      double push = errors.gyroWanderRadPerS() * Math.sqrt(1 - keep * keep);
      for (int i = 0; i < 3; i++) {
        wander[i] = keep * wander[i] + push * random.nextGaussian();
      }
    }
  }

  private static double row(double[] m, double[] v) {
    return m[0] * v[0] + m[1] * v[1] + m[2] * v[2];
  }

  private double shown(double value, double fullScale) {
    if (Double.isInfinite(fullScale)) {
      return value;
    }
    double inside = Math.max(-fullScale, Math.min(fullScale, value));
    if (!errors.quantized()) {
      return inside;
    }
    double step = fullScale / 32768;
    return step * Math.max(-32767, Math.min(32767, Math.rint(inside / step)));
  }

  private double[] stamps(int n, RandomGenerator random) {
    double periodS = periodS();
    double[] timeS = new double[n];
    double most = 0.4 * periodS;
    for (int k = 0; k < n; k++) {
      double jitter = Math.max(-most, Math.min(most, jitterS * random.nextGaussian()));
      timeS[k] = clock.shownS(clock.startS() + k * periodS) + (k == 0 ? 0 : jitter);
    }
    return timeS;
  }

  private BitSet keptAfterLoss(int n, RandomGenerator random) {
    double begin = lossPct / 100 / LOST_TOGETHER;
    BitSet kept = new BitSet(n);
    boolean losing = false;
    for (int k = 0; k < n; k++) {
      double dice = random.nextDouble();
      losing = losing ? dice >= 1 / LOST_TOGETHER : dice < begin;
      kept.set(k, !losing || k == 0 || k == n - 1);
    }
    return kept;
  }

  private UnitStream keep(BitSet kept, double[] timeS, double[][] values) {
    int[] at = kept.stream().toArray();
    for (int i = 0; i < values.length; i++) {
      values[i] = pick(values[i], at);
    }
    return new UnitStream(
        facts, pick(timeS, at), Arrays.copyOfRange(values, 0, 3), Arrays.copyOfRange(values, 3, 6));
  }

  private static double[] pick(double[] column, int[] kept) {
    return kept.length == column.length
        ? column
        : Arrays.stream(kept).mapToDouble(i -> column[i]).toArray();
  }
}
