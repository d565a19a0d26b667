package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds channels that hold one value or show noise only while the unit moves, channels that are
 * missing, and stretches in which all six values stand still although the movement does not.
 */
final class StuckCheck {

  private static final String[] CHANNELS = {
    "accel-x", "accel-y", "accel-z", "gyro-x", "gyro-y", "gyro-z"
  };

  /** A channel that holds its value for as long, while the others move, is stuck, s. */
  private static final double STUCK_S = 0.25;

  /** The others move: mean rate of the other two gyroscope axes above this. */
  private static final double MOVING_RAD_PER_S = Math.toRadians(20);

  /** In twenty times as long a unit rests much of the time. */
  private static final int LONG = 20;

  private static final double MOVING_LONG_RAD_PER_S = Math.toRadians(3);

  /** Less than the last bit of any sensor, rad/s or m/s^2, and so many last bits. */
  private static final double LEAST_JUMP = 1e-4;

  private static final double SMALL_STEPS = 1.5;

  /**
   * No body moves so much about two axes, or along them, and so little, as a part of that, about
   * the third: in simulated lessons 0.23 and more (our choice half way on a log scale to noise).
   */
  private static final double DEAD_PART = 0.03;

  private static final double FAR_RAD_PER_S = Math.toRadians(60);
  private static final double FAR_MPS2 = 8;

  private static final int FROZEN_SAMPLES = 5;
  private static final double FROZEN_RATE_RAD_PER_S = Math.toRadians(10);

  private StuckCheck() {}

  static List<Finding> of(UnitStream unit, double rateHz, Saturation saturation) {
    List<Finding> findings = new ArrayList<>();
    for (int channel = 0; channel < 6; channel++) {
      double range =
          channel < 3 ? saturation.accelFullScaleMps2() : saturation.gyroFullScaleRadPerS();
      findings.addAll(channel(unit, channel, rateHz, range));
    }
    if (findings.isEmpty()) {
      findings.addAll(dead(unit, 0, FAR_MPS2, saturation.accelFullScaleMps2()));
      findings.addAll(dead(unit, 3, FAR_RAD_PER_S, saturation.gyroFullScaleRadPerS()));
    }
    if (findings.isEmpty()) {
      findings.addAll(frozen(unit, rateHz));
    }
    return findings;
  }

  private static List<Finding> channel(UnitStream unit, int channel, double rateHz, double range) {
    double[] values = unit.column(channel);
    if (values.length > 0 && isMissing(values)) {
      return broken(QualityReason.MISSING, CHANNELS[channel]);
    }
    if (values.length > 1 && isConstant(values)) {
      boolean moves = movement(unit, channel, 0, values.length) > Math.toRadians(2);
      return moves ? broken(QualityReason.CONSTANT, CHANNELS[channel]) : List.of();
    }
    int atLeast = Math.max((int) (STUCK_S * rateHz), FROZEN_SAMPLES);
    int longest = longestHeldWhileMoving(unit, values, channel, atLeast, range);
    return longest == 0
        ? List.of()
        : broken(QualityReason.HELD, CHANNELS[channel], longest / rateHz);
  }

  /**
   * A channel of a sensor that shows noise only, where both others show that the unit moves; what
   * lies at the end of the range says so no more than a cut does.
   */
  private static List<Finding> dead(UnitStream unit, int first, double far, double range) {
    double[] most = new double[3];
    Arrays.setAll(most, axis -> mostFromMean(unit.column(first + axis), range));
    for (int axis = 0; axis < 3; axis++) {
      double others = Math.min(most[(axis + 1) % 3], most[(axis + 2) % 3]);
      if (others > far && most[axis] < DEAD_PART * others) {
        return broken(QualityReason.DEAD, CHANNELS[first + axis]);
      }
    }
    return List.of();
  }

  private static double mostFromMean(double[] values, double range) {
    double mean = Averages.mean(values, 0, values.length);
    double end = SaturationCheck.SHARE_OF_FULL_SCALE * range;
    double most = 0;
    for (double value : values) {
      double off = Math.abs(value - mean);
      most = off > most && Math.abs(value) < end ? off : most;
    }
    return most;
  }

  private static List<Finding> broken(QualityReason code, Object... figures) {
    return List.of(Finding.of(Verdict.NOT_USABLE, code, figures));
  }

  private static boolean isMissing(double[] values) {
    return Arrays.stream(values).allMatch(Double::isNaN);
  }

  private static boolean isConstant(double[] values) {
    return Arrays.stream(values).allMatch(value -> value == values[0]);
  }

  /**
   * A value held at the end of the range is a matter of saturation. A long hold shows itself by two
   * equal values half its least length apart, so that few need to be looked at.
   */
  private static int longestHeldWhileMoving(
      UnitStream unit, double[] values, int channel, int atLeast, double range) {
    double end = SaturationCheck.SHARE_OF_FULL_SCALE * range;
    int longest = 0;
    int stride = Math.max(1, atLeast / 2);
    for (int i = stride; i < values.length; i += stride) {
      double held = values[i];
      if (values[i - stride] != held || !(Math.abs(held) < end)) {
        continue;
      }
      int from = i;
      while (from > 0 && values[from - 1] == held) {
        from--;
      }
      int to = i + 1;
      while (to < values.length && values[to] == held) {
        to++;
      }
      if (to - from > atLeast
          && isLeftByAJump(values, from, to)
          && movement(unit, channel, from, to)
              > (to - from > LONG * atLeast ? MOVING_LONG_RAD_PER_S : MOVING_RAD_PER_S)) {
        longest = Math.max(longest, to - from);
      }
      i = Math.max(i, to - stride);
    }
    return longest;
  }

  /**
   * A channel that hangs comes loose with its noise, or farther; a quiet one that does not turn
   * leaves its value by the smallest step there is. One that hangs to the end never comes loose.
   */
  private static boolean isLeftByAJump(double[] values, int from, int to) {
    double jump =
        Math.max(
            from > 0 ? Math.abs(values[from] - values[from - 1]) : 0,
            to < values.length ? Math.abs(values[to] - values[to - 1]) : 0);
    if (!(jump > LEAST_JUMP)) {
      return false;
    }
    if (to == values.length) {
      return true;
    }
    double least = jump;
    for (int i = 1; i < values.length; i++) {
      double step = Math.abs(values[i] - values[i - 1]);
      least = step > 0 && step < least ? step : least;
    }
    return jump > SMALL_STEPS * least;
  }

  /** Mean size of the changes of the gyroscope axes other than the channel, rad/s. */
  private static double movement(UnitStream unit, int channel, int from, int to) {
    double sum = 0;
    int n = 0;
    for (int axis = 0; axis < 3; axis++) {
      if (axis == channel - 3) {
        continue;
      }
      double[] rate = unit.gyroColumnRadPerS(axis);
      double mean = Averages.mean(rate, from, to);
      for (int i = from; i < to; i++) {
        double away = rate[i] - mean;
        if (!Double.isNaN(away)) {
          sum += away * away;
          n++;
        }
      }
    }
    return n == 0 ? 0 : Math.sqrt(2 * sum / n);
  }

  private static List<Finding> frozen(UnitStream unit, double rateHz) {
    double[][] columns = new double[6][];
    Arrays.setAll(columns, unit::column);
    int total = 0;
    int from = 0;
    for (int i = 1; i <= unit.size(); i++) {
      if (i < unit.size() && isRepeat(columns, i)) {
        continue;
      }
      if (i - from >= FROZEN_SAMPLES && isMidMovement(unit, from, i)) {
        total += i - from;
      }
      from = i;
    }
    if (total == 0) {
      return List.of();
    }
    return List.of(Finding.of(Verdict.WIDER_INTERVALS, QualityReason.FROZEN, total / rateHz));
  }

  private static boolean isRepeat(double[][] columns, int i) {
    for (double[] values : columns) {
      if (values[i] != values[i - 1]) {
        return false;
      }
    }
    return true;
  }

  private static boolean isMidMovement(UnitStream unit, int from, int to) {
    boolean jumps = to < unit.size() && change(unit, to - 1, to) > FROZEN_RATE_RAD_PER_S;
    return unit.gyroNormRadPerS(from) > FROZEN_RATE_RAD_PER_S && jumps;
  }

  private static double change(UnitStream unit, int a, int b) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double step = unit.gyroRadPerS(axis, b) - unit.gyroRadPerS(axis, a);
      sum += step * step;
    }
    return Math.sqrt(sum);
  }
}
