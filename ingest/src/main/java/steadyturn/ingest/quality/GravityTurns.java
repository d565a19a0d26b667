package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * How the direction of gravity moved in the unit from one calm moment to the next, by its
 * accelerometer; and where it ought to have come by the rates between, under any reading of the
 * gyroscope's axes.
 */
record GravityTurns(
    UnitStream unit, List<Double> biasRadPerS, List<Pair> pairs, List<Pair> widePairs) {

  /** A moment is as long as this, s. */
  private static final double MOMENT_S = 0.06;

  private static final int FEWEST_SAMPLES = 5;

  /** A calm moment: force spread below this, m/s^2, its size off that at rest by less, part. */
  private static final double CALM_MPS2 = 0.5;

  private static final double NORM_OFF = 0.03;

  /** A turn of gravity that is worth a look, rad: ten times what a sway makes of it. */
  private static final double LEAST_TURN_RAD = Math.toRadians(12);

  /** Rates are followed no longer than this, s; then a bias has spoilt them. */
  private static final double LONGEST_S = 4;

  /** The start moves along when nothing has turned for so long, s. */
  private static final double STALE_S = 2;

  /** From moment to moment gravity turns by less than this where it alone is felt, rad. */
  private static final double SLOW_RAD = Math.toRadians(4);

  private static final int MOST_PAIRS = 30;

  /**
   * A moment may pass for calm by chance: the worst pairs are left out, and none counts for all.
   */
  private static final double KEPT = 0.85;

  private static final double MOST_OFF = 16;

  /** Spread of the direction between two calm moments, rad, and of the rates, part of the way. */
  private static final double CALM_SD_RAD = Math.toRadians(2.5);

  private static final double RATE_SD = 0.015;

  private static final double MOST_EXPECTED_RAD = Math.toRadians(15);

  private static final int SCALE_ROUNDS = 8;
  private static final double SCALE_STEP = 0.02;

  /** A hanging arm swings along with what it feels: a small turn of it tells less than it was. */
  private static final double LEAST_FOR_SCALE_RAD = Math.toRadians(25);

  private static final int FEWEST_FOR_SCALE = 4;

  /** Pairs that fit better than this, in spreads of a calm moment squared, do so by chance. */
  private static final double LEAST_SQUARE = 0.3;

  /** A pair two spreads off has half its weight. */
  private static final double CAUCHY = 4;

  /** Two calm moments by sample, and the direction of gravity in each. */
  record Pair(int from, int to, double[] before, double[] after) {}

  /** A calm moment. */
  private record Moment(int middle, double[] up) {}

  static GravityTurns of(UnitStream unit, RestFacts rest) {
    double g = rest.found() ? rest.accelNormMps2() : StandardGravity.MPS2;
    List<Double> bias = rest.found() ? rest.gyroBiasRadPerS() : List.of(0.0, 0.0, 0.0);
    List<Pair> pairs = new ArrayList<>();
    int samples = (int) Math.round(MOMENT_S / Math.max(1e-9, unit.usualStepS()));
    int length = Math.max(FEWEST_SAMPLES, samples) | 1; // odd: then a sample is the middle
    Moment start = null;
    Moment last = null;
    Moment next = null;
    for (int i = 0; i + length <= unit.size(); i += length) {
      Moment before = last;
      Moment moment = next;
      last = moment;
      next = moment(unit, i, length, g);
      if (before == null || moment == null || next == null || !turnsSlowly(before, moment, next)) {
        continue;
      }
      double sinceS = start == null ? 1e9 : unit.timeS(moment.middle) - unit.timeS(start.middle);
      if (start != null && sinceS < LONGEST_S && angle(start.up, moment.up) > LEAST_TURN_RAD) {
        if (isWhole(unit, start.middle, moment.middle)) {
          pairs.add(new Pair(start.middle, moment.middle, start.up, moment.up));
        }
        start = moment;
      } else if (sinceS > STALE_S) {
        start = moment;
      }
    }
    return new GravityTurns(unit, bias, thinned(pairs), thinned(widened(unit, pairs)));
  }

  private static boolean turnsSlowly(Moment before, Moment at, Moment after) {
    return angle(before.up, at.up) < SLOW_RAD && angle(at.up, after.up) < SLOW_RAD;
  }

  /** Pairs that go on from one another, joined as long as the turn grows: one for a whole bow. */
  private static List<Pair> widened(UnitStream unit, List<Pair> pairs) {
    List<Pair> out = new ArrayList<>();
    for (Pair pair : pairs) {
      Pair last = out.isEmpty() ? pair : out.get(out.size() - 1);
      boolean goesOn =
          last.to == pair.from
              && unit.timeS(pair.to) - unit.timeS(last.from) < LONGEST_S
              && angle(last.before, pair.after) > angle(last.before, last.after);
      if (goesOn) {
        out.set(out.size() - 1, new Pair(last.from, pair.to, last.before, pair.after));
      } else {
        out.add(pair);
      }
    }
    return out;
  }

  private static List<Pair> thinned(List<Pair> pairs) {
    int every = 1 + (pairs.size() - 1) / MOST_PAIRS;
    List<Pair> out = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i += every) {
      out.add(pairs.get(i));
    }
    return out;
  }

  /** The moment; null where it was not calm. */
  private static @Nullable Moment moment(UnitStream unit, int from, int length, double g) {
    double[] up = new double[3];
    double variance = 0;
    for (int axis = 0; axis < 3; axis++) {
      double sum = 0;
      double squares = 0;
      double first = unit.accelMps2(axis, from);
      for (int i = from; i < from + length; i++) {
        double away = unit.accelMps2(axis, i) - first;
        sum += away;
        squares += away * away;
      }
      up[axis] = first + sum / length;
      variance += (squares - sum * sum / length) / (length - 1);
    }
    double norm = Math.sqrt(up[0] * up[0] + up[1] * up[1] + up[2] * up[2]);
    boolean isCalm =
        variance < CALM_MPS2 * CALM_MPS2
            && Math.abs(norm / g - 1) < NORM_OFF
            && unit.timeS(from + length - 1) - unit.timeS(from) < 2 * length * unit.usualStepS();
    if (!isCalm) {
      return null;
    }
    for (int axis = 0; axis < 3; axis++) {
      up[axis] /= norm;
    }
    return new Moment(from + length / 2, up);
  }

  private static boolean isWhole(UnitStream unit, int from, int to) {
    for (int i = from; i < to; i++) {
      if (!unit.hasRate(i) || unit.timeS(i + 1) - unit.timeS(i) > 3.5 * unit.usualStepS()) {
        return false;
      }
    }
    return true;
  }

  static double angle(double[] a, double[] b) {
    double cos = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    return Math.acos(Math.max(-1, Math.min(1, cos)));
  }

  /**
   * A reading of the gyroscope: which of its axes stands for x, y, z, each with its sign, and a
   * factor.
   */
  record Reading(List<Integer> axes, List<Integer> signs, double scale) {

    static final Reading AS_GIVEN = new Reading(List.of(0, 1, 2), List.of(1, 1, 1), 1);

    Reading times(double factor) {
      return new Reading(axes, signs, scale * factor);
    }
  }

  /**
   * How far the rates miss the direction seen, over what may be expected of a sound unit; mean
   * square.
   */
  double misfit(Reading reading) {
    double[] offs = new double[pairs.size()];
    for (int i = 0; i < offs.length; i++) {
      Pair pair = pairs.get(i);
      double[] u = pair.before.clone();
      double pathRad = follow(pair, reading, u);
      double expected = Math.min(MOST_EXPECTED_RAD, Math.hypot(CALM_SD_RAD, RATE_SD * pathRad));
      offs[i] = angle(u, pair.after) / expected;
    }
    Arrays.sort(offs);
    return Arrays.stream(offs, 0, (int) Math.ceil(KEPT * offs.length))
        .map(off -> Math.min(MOST_OFF, off * off))
        .average()
        .orElse(0);
  }

  /**
   * How much farther gravity turned than the rates say.
   *
   * @param off part of the turn: 0.05 where a rate is stated 5 % too high
   * @param sd its spread
   */
  record Scale(double off, double sd) {}

  /** Where nothing can be said of it. */
  static final Scale UNKNOWN = new Scale(0, Double.POSITIVE_INFINITY);

  /**
   * Least squares over all pairs, each weighted down by how far it lies off (Cauchy's weights): a
   * moment may pass for calm by chance.
   */
  Scale scale() {
    double least = LEAST_FOR_SCALE_RAD / CALM_SD_RAD;
    List<double[]> products =
        widePairs.stream().map(this::products).filter(p -> p[0] > least * least).toList();
    double off = 0;
    double information = 0;
    double squares = 0;
    for (int round = 0; round < SCALE_ROUNDS; round++) {
      double along = 0;
      double weights = 0;
      information = 0;
      squares = 0;
      for (double[] p : products) {
        double square = p[2] - 2 * off * p[1] + off * off * p[0];
        double weight = 1 / (1 + square / CAUCHY);
        information += weight * p[0];
        along += weight * p[1];
        squares += weight * square;
        weights += weight;
      }
      off = along / Math.max(1e-12, information);
      squares /= Math.max(1, weights);
    }
    return products.size() >= FEWEST_FOR_SCALE
        ? new Scale(off, Math.sqrt(Math.max(LEAST_SQUARE, squares) / information))
        : UNKNOWN;
  }

  /**
   * How the end of a pair moves with the scale of the rates, times itself and times how far it is
   * off, and the square of that; all in spreads of a calm moment.
   */
  private double[] products(Pair pair) {
    double[] at = pair.before.clone();
    double[] further = pair.before.clone();
    follow(pair, Reading.AS_GIVEN, at);
    follow(pair, Reading.AS_GIVEN.times(1 + SCALE_STEP), further);
    double[] out = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      double slope = (further[axis] - at[axis]) / SCALE_STEP / CALM_SD_RAD;
      double miss = (pair.after[axis] - at[axis]) / CALM_SD_RAD;
      out[0] += slope * slope;
      out[1] += slope * miss;
      out[2] += miss * miss;
    }
    return out;
  }

  /** Turns a direction that stands still in the room along with the unit; answers the way. */
  private double follow(Pair pair, Reading reading, double[] u) {
    double path = 0;
    double[] w = new double[3];
    for (int i = pair.from; i < pair.to; i++) {
      double step = reading.scale * (unit.timeS(i + 1) - unit.timeS(i));
      double square = 0;
      for (int k = 0; k < 3; k++) {
        int axis = reading.axes.get(k);
        double mean = (unit.gyroRadPerS(axis, i) + unit.gyroRadPerS(axis, i + 1)) / 2;
        w[k] = -reading.signs.get(k) * (mean - biasRadPerS.get(axis)) * step;
        square += w[k] * w[k];
      }
      double turn = Math.sqrt(square);
      path += turn;
      rotate(u, w, turn);
    }
    return path;
  }

  /** Rodrigues' formula. */
  private static void rotate(double[] u, double[] w, double turn) {
    if (turn < 1e-12) {
      return;
    }
    double cos = Math.cos(turn);
    double a = Math.sin(turn) / turn;
    double b = (1 - cos) / (turn * turn) * (w[0] * u[0] + w[1] * u[1] + w[2] * u[2]);
    double x = u[0] * cos + a * (w[1] * u[2] - w[2] * u[1]) + b * w[0];
    double y = u[1] * cos + a * (w[2] * u[0] - w[0] * u[2]) + b * w[1];
    double z = u[2] * cos + a * (w[0] * u[1] - w[1] * u[0]) + b * w[2];
    u[0] = x;
    u[1] = y;
    u[2] = z;
  }
}
