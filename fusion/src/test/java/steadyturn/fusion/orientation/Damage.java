package steadyturn.fusion.orientation;

import java.util.Arrays;
import java.util.Random;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Ways in which real recordings are worse than those of a laboratory, done to one of them. */
enum Damage {
  LOST_SAMPLES("2 % of the samples lost"),
  SHORT_GAPS("50 ms lost every 2 s"),
  LONG_GAPS("300 ms lost every 20 s"),
  LOST_VALUES("2 % of the rates and forces NaN"),
  JITTER("time stamps late by up to 0.5 ms"),
  GYRO_BIAS("gyroscope bias 3 deg/s more"),
  GYRO_SCALE("gyroscope scale 1 % more"),
  ACCEL_BIAS("accelerometer bias 20 mg more"),
  LOW_RATE("95 Hz: means of three samples"),
  TAPS("two taps a second, up to 60 m/s^2, and their rebound"),
  VIBRATION("10 m/s^2 at 130 Hz"),
  GYRO_CLIPPED("gyroscope clipped at 600 deg/s"),
  ACCEL_CLIPPED("accelerometer clipped at 4 g");

  private static final long SEED = 20260107;
  private static final double CLIP_RATE = Math.toRadians(600);
  private static final double CLIP_FORCE = 39.2;

  private final String words;

  Damage(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  BroadTrial to(BroadTrial trial) {
    int n = trial.stream().size();
    double[] t = trial.stream().timeColumnS().clone();
    double[][] a = new double[3][];
    double[][] g = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      a[axis] = trial.stream().accelColumnMps2(axis).clone();
      g[axis] = trial.stream().gyroColumnRadPerS(axis).clone();
    }
    boolean[] keep = new boolean[n];
    Arrays.fill(keep, true);
    Random random = new Random(SEED);
    for (int i = 1; i < n; i++) {
      spoil(i, t, a, g, keep, random);
    }
    return kept(trial, t, a, g, keep);
  }

  private void spoil(int i, double[] t, double[][] a, double[][] g, boolean[] keep, Random random) {
    switch (this) {
      case LOST_SAMPLES -> keep[i] = random.nextInt(50) > 0;
      case SHORT_GAPS -> keep[i] = i % 571 >= 14;
      case LONG_GAPS -> keep[i] = i % 5710 >= 86;
      case TAPS -> tap(i, a, random);
      case JITTER -> t[i] += 0.0005 * random.nextDouble();
      case LOW_RATE -> keep[i] = i % 3 == 2;
      default -> {}
    }
    for (int axis = 0; axis < 3; axis++) {
      spoilAxis(axis, i, t, a, g, random);
    }
  }

  private static void tap(int i, double[][] a, Random random) {
    if (random.nextInt(143) == 0 && i + 2 < a[0].length) {
      for (double[] axis : a) {
        double force = 30 * random.nextGaussian();
        axis[i] += force;
        axis[i + 1] += 0.5 * force;
        axis[i + 2] -= force;
      }
    }
  }

  private void spoilAxis(int axis, int i, double[] t, double[][] a, double[][] g, Random random) {
    switch (this) {
      case LOST_VALUES -> {
        g[axis][i] += random.nextInt(150) == 0 ? Double.NaN : 0;
        a[axis][i] += random.nextInt(150) == 0 ? Double.NaN : 0;
      }
      case GYRO_BIAS -> g[axis][i] += Math.toRadians(axis == 1 ? -3 : 3);
      case GYRO_SCALE -> g[axis][i] *= 1.01;
      case ACCEL_BIAS -> a[axis][i] += axis == 0 ? 0.2 : 0;
      case LOW_RATE -> {
        if (i % 3 == 2) {
          a[axis][i] = (a[axis][i] + a[axis][i - 1] + a[axis][i - 2]) / 3;
          g[axis][i] = (g[axis][i] + g[axis][i - 1] + g[axis][i - 2]) / 3;
        }
      }
      case VIBRATION -> a[axis][i] += 10 * Math.sin(2 * Math.PI * 130 * t[i] + axis);
      case GYRO_CLIPPED -> g[axis][i] = Math.max(-CLIP_RATE, Math.min(CLIP_RATE, g[axis][i]));
      case ACCEL_CLIPPED -> a[axis][i] = Math.max(-CLIP_FORCE, Math.min(CLIP_FORCE, a[axis][i]));
      default -> {}
    }
  }

  private UnitFacts facts() {
    double none = Double.POSITIVE_INFINITY;
    return new UnitFacts(
        BodyPoint.LEAD_HAND,
        "",
        285.71,
        this == ACCEL_CLIPPED ? CLIP_FORCE : none,
        this == GYRO_CLIPPED ? CLIP_RATE : none,
        false);
  }

  private BroadTrial kept(
      BroadTrial trial, double[] t, double[][] a, double[][] g, boolean[] keep) {
    boolean[] moving = new boolean[keep.length];
    int count = 0;
    for (int i = 0; i < keep.length; i++) {
      if (keep[i]) {
        moving[count++] = trial.moving()[i];
      }
    }
    UnitStream stream =
        new UnitStream(facts(), only(t, keep, count), only(a, keep, count), only(g, keep, count));
    return new BroadTrial(
        trial.name(), stream, only(trial.truth(), keep, count), Arrays.copyOf(moving, count));
  }

  private static double[][] only(double[][] columns, boolean[] keep, int count) {
    double[][] out = new double[columns.length][];
    for (int i = 0; i < out.length; i++) {
      out[i] = only(columns[i], keep, count);
    }
    return out;
  }

  private static double[] only(double[] column, boolean[] keep, int count) {
    double[] out = new double[count];
    int at = 0;
    for (int i = 0; i < column.length; i++) {
      if (keep[i]) {
        out[at++] = column[i];
      }
    }
    return out;
  }
}
