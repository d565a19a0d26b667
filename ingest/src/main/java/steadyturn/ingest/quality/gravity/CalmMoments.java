package steadyturn.ingest.quality.gravity;

import java.util.Arrays;
import steadyturn.ingest.sample.UnitStream;

/**
 * The moments of a stream in which hardly more than gravity is felt, by number from its begin on.
 *
 * @param length of a moment, samples
 * @param up direction of the force, three numbers a moment; NaN where it was not calm
 */
record CalmMoments(int length, double[] up) {

  /** A moment is as long as this, s. */
  private static final double MOMENT_S = 0.06;

  private static final int FEWEST_SAMPLES = 5;

  /** A calm moment: force spread below this, m/s^2, its size off that at rest by less, part. */
  private static final double CALM_MPS2 = 0.5;

  private static final double NORM_OFF = 0.03;

  /** From moment to moment gravity turns by less than this where it alone is felt, rad. */
  private static final double SLOW_RAD = Math.toRadians(4);

  /** A swinging arm and a cocked wrist turn round in fewer moments, or by more (our choice). */
  private static final int STILL = 4;

  private static final double STILL_RAD = Math.toRadians(0.8);

  /** A still moment is looked for so long before a turn, and after it, moments. */
  private static final int SETTLES = 16;

  static CalmMoments of(UnitStream unit, double g) {
    int samples = (int) Math.round(MOMENT_S / Math.max(1e-9, unit.usualStepS()));
    int length = Math.max(FEWEST_SAMPLES, samples) | 1; // odd: then a sample is the middle
    double[] up = new double[3 * (unit.size() / length)];
    for (int k = 0; 3 * k < up.length; k++) {
      look(unit, k * length, length, g, up, 3 * k);
    }
    return new CalmMoments(length, up);
  }

  /** Writes the direction of the force in a moment, where it was calm. */
  private static void look(UnitStream unit, int from, int length, double g, double[] up, int at) {
    double variance = 0;
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double sum = 0;
      double squares = 0;
      double first = unit.accelMps2(axis, from);
      for (int i = from; i < from + length; i++) {
        double away = unit.accelMps2(axis, i) - first;
        sum += away;
        squares += away * away;
      }
      double mean = first + sum / length;
      up[at + axis] = mean;
      square += mean * mean;
      variance += (squares - sum * sum / length) / (length - 1);
    }
    double norm = Math.sqrt(square);
    boolean isCalm =
        variance < CALM_MPS2 * CALM_MPS2
            && Math.abs(norm / g - 1) < NORM_OFF
            && unit.timeS(from + length - 1) - unit.timeS(from) < 2 * length * unit.usualStepS();
    for (int axis = 0; axis < 3; axis++) {
      up[at + axis] = isCalm ? up[at + axis] / norm : Double.NaN;
    }
  }

  int size() {
    return up.length / 3;
  }

  /** The sample in its middle. */
  int sample(int moment) {
    return moment * length + length / 2;
  }

  /** The moment of a sample. */
  int of(int sample) {
    return sample / length;
  }

  double[] up(int moment) {
    return Arrays.copyOfRange(up, 3 * moment, 3 * moment + 3);
  }

  /** Whether it and the moments beside it are calm and gravity turned slowly. */
  boolean isSlow(int moment) {
    return isWithin(moment, 1, SLOW_RAD);
  }

  /** The nearest moment on the way, from this one on, in which the unit lay still; -1 if none. */
  int settled(int from, int way) {
    for (int k = 0; k < SETTLES; k++) {
      if (isWithin(from + way * k, STILL, STILL_RAD)) {
        return from + way * k;
      }
    }
    return -1;
  }

  private boolean isWithin(int moment, int beside, double mostRad) {
    if (moment < beside || moment + beside >= size() || Double.isNaN(up[3 * moment])) {
      return false;
    }
    double[] own = up(moment);
    for (int k = moment - beside; k <= moment + beside; k++) {
      if (!(k == moment || GravityTurns.angle(own, up(k)) < mostRad)) {
        return false;
      }
    }
    return true;
  }
}
