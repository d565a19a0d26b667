package steadyturn.ingest.quality.gravity;

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

  // data sheets of such sensors give 1 to 3 %, and 40 mg of a force's bias, which lean what is
  // taken
  // for up: our choice, from memory
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

  /** Three pairs fit well by chance: they are worth no more than their calm moments. */
  private static final double LEAST_SQUARE_OF_FEWEST = 1;

  /** A pair two spreads off has half its weight. */
  private static final double CAUCHY = 4;

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
    double worthwhile = leastRad / GravityTurns.CALM_SD_RAD;
    List<double[]> products =
        turns.widePairs().stream()
            .map(pair -> products(turns, pair))
            .filter(p -> p[0] > worthwhile * worthwhile)
            .toList();
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
    double least = products.size() > FEWEST_PAIRS ? LEAST_SQUARE : LEAST_SQUARE_OF_FEWEST;
    return products.size() >= FEWEST_PAIRS
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
      double slope = (further[axis] - at[axis]) / STEP / GravityTurns.CALM_SD_RAD;
      double miss = (pair.after()[axis] - at[axis]) / GravityTurns.CALM_SD_RAD;
      out[0] += slope * slope;
      out[1] += slope * miss;
      out[2] += miss * miss;
    }
    return out;
  }
}
