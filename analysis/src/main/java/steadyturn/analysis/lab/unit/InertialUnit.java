package steadyturn.analysis.lab.unit;

import java.util.Arrays;
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
    double periodS = 1 / (facts.nominalRateHz() * (1 + clock.skew()));
    int n = (int) Math.floor((untilS - clock.startS()) / periodS) + 1;
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    sample(path, periodS, accel, gyro, random);
    double[] timeS = stamps(n, periodS, random);
    return keep(keptAfterLoss(n, random), timeS, accel, gyro);
  }

  private void sample(
      UnitPath path, double periodS, double[][] accel, double[][] gyro, RandomGenerator random) {
    double perRoot = Math.sqrt(facts.nominalRateHz() / 2);
    double[] force = new double[3];
    double[] rate = new double[3];
    double[] wander = new double[3];
    double keep = Math.exp(-WANDER_EVERY * periodS / WANDER_CORRELATION_S);
    double push = errors.gyroWanderRadPerS() * Math.sqrt(1 - keep * keep);
    int n = accel[0].length;
    UnitPath felt = lowPassHz > 0 ? new LowPass(path, lowPassHz, periodS) : path;
    for (int k = 0; k < n; k++) {
      felt.feel(clock.startS() + k * periodS, force, rate);
      if (k % WANDER_EVERY == 0) {
        for (int i = 0; i < 3; i++) {
          wander[i] = keep * wander[i] + push * random.nextGaussian();
        }
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
        accel[i][k] = shown(mirrored && i == 1 ? -a : a, facts.accelFullScaleMps2());
        gyro[i][k] = shown(mirrored && i != 1 ? -w : w, facts.gyroFullScaleRadPerS());
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

  private double[] stamps(int n, double periodS, RandomGenerator random) {
    double[] timeS = new double[n];
    double most = 0.4 * periodS;
    for (int k = 0; k < n; k++) {
      double jitter = Math.max(-most, Math.min(most, jitterS * random.nextGaussian()));
      timeS[k] = clock.shownS(clock.startS() + k * periodS) + (k == 0 ? 0 : jitter);
    }
    return timeS;
  }

  private int[] keptAfterLoss(int n, RandomGenerator random) {
    double begin = lossPct / 100 / LOST_TOGETHER;
    int[] kept = new int[n];
    int count = 0;
    boolean losing = false;
    for (int k = 0; k < n; k++) {
      double dice = random.nextDouble();
      losing = losing ? dice >= 1 / LOST_TOGETHER : dice < begin;
      if (!losing || k == 0 || k == n - 1) {
        kept[count++] = k;
      }
    }
    return Arrays.copyOf(kept, count);
  }

  private UnitStream keep(int[] kept, double[] timeS, double[][] accel, double[][] gyro) {
    if (kept.length == timeS.length) {
      return new UnitStream(facts, timeS, accel, gyro);
    }
    double[][] a = new double[3][];
    double[][] g = new double[3][];
    for (int i = 0; i < 3; i++) {
      a[i] = pick(accel[i], kept);
      g[i] = pick(gyro[i], kept);
    }
    return new UnitStream(facts, pick(timeS, kept), a, g);
  }

  private static double[] pick(double[] column, int[] kept) {
    double[] out = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      out[i] = column[kept[i]];
    }
    return out;
  }
}
