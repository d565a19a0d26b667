package steadyturn.ingest.quality.gravity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * How the direction of gravity moved in the unit from one calm moment to the next, by its
 * accelerometer; and where it ought to have come by the rates between, under any reading of the
 * gyroscope's axes.
 */
public record GravityTurns(
    UnitStream unit, List<Double> biasRadPerS, List<Pair> pairs, List<Pair> widePairs) {

  /** A turn of gravity that is worth a look, rad: ten times what a sway makes of it. */
  private static final double LEAST_TURN_RAD = Math.toRadians(12);

  /** Rates are followed no longer than this, s; then a bias has spoilt them. */
  private static final double LONGEST_S = 4;

  /** The start moves along when nothing has turned for so long, s. */
  private static final double STALE_S = 2;

  private static final int MOST_PAIRS = 30;

  /**
   * A moment may pass for calm by chance: the worst pairs are left out, and none counts for all.
   */
  private static final double KEPT = 0.85;

  private static final double MOST_OFF = 16;

  /** Spread of the direction between two calm moments, rad, and of the rates, part of the way. */
  static final double CALM_SD_RAD = Math.toRadians(2.5);

  /**
   * The same between two moments in which a calibrated unit was still for half a second: the bias
   * of its force and a person's sway (our choice). Not so for others, whose bias leans them more.
   */
  private static final double STILL_SD_RAD = Math.toRadians(1);

  private static final double RATE_SD = 0.015;

  private static final double MOST_EXPECTED_RAD = Math.toRadians(15);

  /** Numbers a step: its turn about x, y, z as given, its size, and what a rotation needs of it. */
  private static final int STEP = 7;

  /**
   * Two calm moments by sample, and the direction of gravity in each.
   *
   * @param sdRad how well the two directions are known beside each other
   * @param steps the turns between, made ready for all readings of scale 1
   */
  public record Pair(
      int from, int to, double[] before, double[] after, double sdRad, double[] steps) {

    private static Pair of(CalmMoments moments, int from, int to, double sdRad) {
      return new Pair(
          moments.sample(from),
          moments.sample(to),
          moments.up(from),
          moments.up(to),
          sdRad,
          new double[0]);
    }

    /** Whether the unit was still at both ends. */
    boolean isStill() {
      return sdRad < CALM_SD_RAD;
    }

    private Pair joined(Pair next) {
      return new Pair(from, next.to, before, next.after, sdRad, steps);
    }

    Pair ready(UnitStream unit, List<Double> biasRadPerS) {
      double[] turns = GravityTurns.steps(unit, biasRadPerS, from, to, 1);
      return new Pair(from, to, before, after, sdRad, turns);
    }
  }

  /**
   * Looks for the calm moments of a unit.
   *
   * @param g size of its force at rest, m/s^2
   * @param biasRadPerS of its gyroscope
   */
  public static GravityTurns of(UnitStream unit, double g, List<Double> biasRadPerS) {
    List<Pair> pairs = new ArrayList<>();
    CalmMoments moments = CalmMoments.of(unit, g);
    int start = -1;
    for (int k = 0; k < moments.size(); k++) {
      if (!moments.isSlow(k)) {
        continue;
      }
      double sinceS =
          start < 0 ? 1e9 : unit.timeS(moments.sample(k)) - unit.timeS(moments.sample(start));
      boolean turns =
          start >= 0
              && sinceS < LONGEST_S
              && angle(moments.up(start), moments.up(k)) > LEAST_TURN_RAD;
      if (turns && isWhole(unit, moments.sample(start), moments.sample(k))) {
        pairs.add(Pair.of(moments, start, k, CALM_SD_RAD));
      }
      start = turns || sinceS > STALE_S ? k : start;
    }
    List<Pair> wide = widened(unit, pairs);
    return new GravityTurns(
        unit,
        biasRadPerS,
        ready(pairs, unit, biasRadPerS),
        ready(
            unit.facts().calibrated()
                ? wide.stream().map(pair -> settled(unit, moments, pair)).toList()
                : wide,
            unit,
            biasRadPerS));
  }

  /** The pair from the last still moment before it to the first one after, where there are. */
  private static Pair settled(UnitStream unit, CalmMoments moments, Pair pair) {
    int from = moments.settled(moments.of(pair.from), -1);
    int to = moments.settled(moments.of(pair.to), 1);
    return from >= 0 && to >= 0 && isWhole(unit, moments.sample(from), moments.sample(to))
        ? Pair.of(moments, from, to, STILL_SD_RAD)
        : pair;
  }

  private static List<Pair> ready(List<Pair> pairs, UnitStream unit, List<Double> biasRadPerS) {
    return thinned(pairs).stream().map(pair -> pair.ready(unit, biasRadPerS)).toList();
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
        out.set(out.size() - 1, last.joined(pair));
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
  public record Reading(List<Integer> axes, List<Integer> signs, double scale) {

    public static final Reading AS_GIVEN = new Reading(List.of(0, 1, 2), List.of(1, 1, 1), 1);

    public Reading times(double factor) {
      return new Reading(axes, signs, scale * factor);
    }
  }

  /**
   * How far the rates miss the direction seen, over what may be expected of a sound unit; mean
   * square.
   */
  public double misfit(Reading reading) {
    return misfit(reading, MOST_OFF);
  }

  /** The same; infinite as soon as it is sure to be above the most that is of interest. */
  public double misfit(Reading reading, double most) {
    double[] squares = new double[pairs.size()];
    int kept = (int) Math.ceil(KEPT * squares.length);
    double least = MOST_OFF * (kept - squares.length); // those left out count so much at most
    for (int i = 0; i < squares.length; i++) {
      Pair pair = pairs.get(i);
      double[] u = pair.before.clone();
      double pathRad = follow(pair, reading, u);
      double expected = Math.min(MOST_EXPECTED_RAD, Math.hypot(CALM_SD_RAD, RATE_SD * pathRad));
      double off = angle(u, pair.after) / expected;
      squares[i] = Math.min(MOST_OFF, off * off);
      least += squares[i];
      if (least > most * kept) {
        return Double.POSITIVE_INFINITY;
      }
    }
    Arrays.sort(squares);
    return Arrays.stream(squares, 0, kept).average().orElse(0);
  }

  private static double[] steps(
      UnitStream unit, List<Double> biasRadPerS, int from, int to, double scale) {
    double[] steps = new double[STEP * (to - from)];
    for (int i = from; i < to; i++) {
      int at = STEP * (i - from);
      double stepS = scale * (unit.timeS(i + 1) - unit.timeS(i));
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        double mean = (unit.gyroRadPerS(axis, i) + unit.gyroRadPerS(axis, i + 1)) / 2;
        double turn = (mean - biasRadPerS.get(axis)) * stepS;
        steps[at + axis] = turn;
        square += turn * turn;
      }
      double size = Math.sqrt(square);
      boolean isStill = size < 1e-12;
      steps[at + 3] = size;
      steps[at + 4] = isStill ? 1 : Math.cos(size);
      steps[at + 5] = isStill ? 0 : Math.sin(size) / size;
      steps[at + 6] = isStill ? 0 : (1 - steps[at + 4]) / (size * size);
    }
    return steps;
  }

  /** Turns a direction that stands still in the room along with the unit; answers the way. */
  double follow(Pair pair, Reading reading, double[] u) {
    double[] steps =
        reading.scale == 1
            ? pair.steps
            : steps(unit, biasRadPerS, pair.from, pair.to, reading.scale);
    int x = reading.axes.get(0);
    int y = reading.axes.get(1);
    int z = reading.axes.get(2);
    double signX = -reading.signs.get(0);
    double signY = -reading.signs.get(1);
    double signZ = -reading.signs.get(2);
    double path = 0;
    for (int at = 0; at < steps.length; at += STEP) {
      path += steps[at + 3];
      rotate(u, signX * steps[at + x], signY * steps[at + y], signZ * steps[at + z], steps, at + 4);
    }
    return path;
  }

  /** Rodrigues' formula. */
  private static void rotate(
      double[] u, double wx, double wy, double wz, double[] steps, int formula) {
    double cos = steps[formula];
    double a = steps[formula + 1];
    double b = steps[formula + 2] * (wx * u[0] + wy * u[1] + wz * u[2]);
    double x = u[0] * cos + a * (wy * u[2] - wz * u[1]) + b * wx;
    double y = u[1] * cos + a * (wz * u[0] - wx * u[2]) + b * wy;
    double z = u[2] * cos + a * (wx * u[1] - wy * u[0]) + b * wz;
    u[0] = x;
    u[1] = y;
    u[2] = z;
  }
}
