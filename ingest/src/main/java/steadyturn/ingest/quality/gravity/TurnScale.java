package steadyturn.ingest.quality.gravity;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.quality.gravity.GravityTurns.Pair;
import steadyturn.ingest.quality.gravity.GravityTurns.Reading;
import steadyturn.ingest.sample.UnitFacts;

/**
 * How much farther gravity turned than the rates say.
 *
 * @param off part of the turn: 0.05 where a rate is stated 5 % too high
 * @param sd its spread
 */
public record TurnScale(double off, double sd) {

  /** Where nothing can be said of it. */
  public static final TurnScale UNKNOWN = new TurnScale(0, Double.POSITIVE_INFINITY);

  /** How well a gyroscope's own scale is known, part: of a calibrated unit and of another. */
  private static final double CALIBRATED_SD = 0.006;

  // data sheets of such sensors give 1 to 3 %, and a force's bias of 40 mg leans what is taken for
  // up; our choice, sheets from memory
  private static final double RAW_SD = 0.02;

  private static final int ROUNDS = 8;
  private static final double STEP = 0.02;

  private static final double LEAST_OF_TRUNK_RAD = Math.toRadians(25);

  /**
   * A hanging arm swings along with what it feels, a wrist that is cocked turns round where it
   * seems calm: small turns of them all tell less than it was. Swings and tables turn them farther.
   */
  private static final double LEAST_OF_ARM_RAD = Math.toRadians(50);

  private static final int FEWEST_PAIRS = 3;

  /** Pairs that fit better than this, in spreads of a calm moment squared, do so by chance. */
  private static final double LEAST_SQUARE = 0.3;

  /**
   * Three pairs fit well by chance: they are worth no more than their calm moments. One or two tell
   * where the unit was still at their ends, and are worth less.
   */
  private static final double LEAST_SQUARE_OF_FEWEST = 1;

  /** A pair two spreads off has half its weight. */
  private static final double CAUCHY = 4;

  /** No rate is stated farther off than that, part, or it is seen (our choice). */
  private static final double FARTHEST = 0.08;

  /**
   * How often a rate is stated wrong where nothing tells (our choice: often, as what gravity tells
   * soon outweighs it, and where it tells nothing nothing else would).
   */
  private static final double WRONG = 0.2;

  private static final double DOUBT_STEP = 0.001;

  /** Mean of the scales, each as sure as it is: a rate stated wrong is wrong in all of them. */
  public static TurnScale common(List<TurnScale> all) {
    double sum = 0;
    double weights = 0;
    for (TurnScale scale : all) {
      double weight = 1 / (scale.sd * scale.sd);
      sum += weight * (Double.isFinite(scale.sd) ? scale.off : 0);
      weights += weight;
    }
    return new TurnScale(weights > 0 ? sum / weights : 0, 1 / Math.sqrt(weights));
  }

  /** What a part of the time it was seen in tells of it, 0 to 1. */
  public TurnScale of(double part) {
    return part > 0 ? new TurnScale(off, sd / Math.sqrt(part)) : UNKNOWN;
  }

  /**
   * How far a stated rate may be off in spite of it, part, root of the mean square: by Bayes' rule
   * it is right, or off by anything.
   */
  public double doubt() {
    double right = (1 - WRONG) * likelihood(0);
    double wrong = 0;
    double square = 0;
    for (double off = -FARTHEST; off <= FARTHEST; off += DOUBT_STEP) {
      double anywhere = WRONG * DOUBT_STEP / (2 * FARTHEST) * likelihood(off);
      wrong += anywhere;
      square += anywhere * off * off;
    }
    return right + wrong > 0 ? Math.sqrt(square / (right + wrong)) : FARTHEST;
  }

  private double likelihood(double trueOff) {
    double spreads = (off - trueOff) / sd;
    return Math.exp(-0.5 * spreads * spreads);
  }

  /** With what a sound unit's own scale may be off. */
  public TurnScale of(UnitFacts unit) {
    return new TurnScale(off, Math.hypot(sd, unit.calibrated() ? CALIBRATED_SD : RAW_SD));
  }

  /**
   * Least squares over all pairs, each weighted down by how far it lies off (Cauchy's weights): a
   * moment may pass for calm by chance.
   */
  public static TurnScale of(GravityTurns turns) {
    double leastRad = turns.unit().point().isTrunk() ? LEAST_OF_TRUNK_RAD : LEAST_OF_ARM_RAD;
    List<double[]> products = new ArrayList<>();
    int still = 0;
    for (Pair pair : turns.widePairs()) {
      double[] p = products(turns, pair);
      if (Math.sqrt(p[0]) * pair.sdRad() > leastRad) {
        products.add(p);
        still += pair.isStill() ? 1 : 0;
      }
    }
    double off = 0;
    double information = 0;
    double squares = 0;
    for (int round = 0; round < ROUNDS; round++) {
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
    double few = (double) FEWEST_PAIRS / Math.max(1, products.size());
    double least = few < 1 ? LEAST_SQUARE : few * LEAST_SQUARE_OF_FEWEST;
    return few <= 1 || still > 0
        ? new TurnScale(off, Math.sqrt(Math.max(least, squares) / information))
        : UNKNOWN;
  }

  /**
   * How the end of a pair moves with the scale of the rates, times itself and times how far it is
   * off, and the square of that; all in spreads of a calm moment.
   */
  private static double[] products(GravityTurns turns, Pair pair) {
    double[] at = pair.before().clone();
    double[] further = pair.before().clone();
    turns.follow(pair, Reading.AS_GIVEN, at);
    turns.follow(pair, Reading.AS_GIVEN.times(1 + STEP), further);
    double[] out = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      double slope = (further[axis] - at[axis]) / STEP / pair.sdRad();
      double miss = (pair.after()[axis] - at[axis]) / pair.sdRad();
      out[0] += slope * slope;
      out[1] += slope * miss;
      out[2] += miss * miss;
    }
    return out;
  }
}
