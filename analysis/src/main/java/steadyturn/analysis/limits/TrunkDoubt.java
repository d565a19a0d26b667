package steadyturn.analysis.limits;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Two answers weighed by Bayes' rule: a trunk's clock is right as far as it is known, or it lies
 * anywhere. A single lag may be a habit of the player, or a step taken for the blow; only a clock
 * moves all of them alike. What comes back in every swing of a player says it once.
 *
 * @param wrong how likely the clock is off
 * @param offS by how much, if it is, s
 * @param sdS what that adds to the spread of the clock, s
 */
record TrunkDoubt(double wrong, double offS, double sdS) {

  /** Starts stated by hand lie no farther off than this, or the pelvis shows another swing, s. */
  static final double REACH_S = 0.5;

  private static final double STEP_S = 0.005;

  /** How often a start is stated wrong where nothing but it ties two units (our choice). */
  private static final double WRONG = 0.02;

  /** How often a habit lies three times as far off as bodies usually do (our choice). */
  private static final double HABIT = 0.1;

  private static final double FAR = 3;

  /** How often the blow that a trunk seems to feel is none of the ball (our choice). */
  private static final double STRANGER = 0.15;

  /** Onset of a blow in the trunk and its way there, and onset in the arm, s. */
  private static final double BLOW_SD_S = 0.008;

  /** How much later than it ought to be the hips did something, with its spread among bodies. */
  record Witness(double lateS, double sdS) {

    private double likelihood(double offS) {
      return (1 - HABIT) * normal(lateS - offS, sdS) + HABIT * normal(lateS - offS, FAR * sdS);
    }
  }

  /**
   * What they say together.
   *
   * @param kinds lags of one kind each, one a swing
   * @param blowsS how late the trunk felt what may be the blow, s
   * @param knownS spread of the clock as it is known, s
   */
  static TrunkDoubt of(List<List<Witness>> kinds, List<Double> blowsS, double knownS) {
    List<Witness> middles = kinds.stream().flatMap(all -> middle(all).stream()).toList();
    double right = 0;
    double wrong = 0;
    double off = 0;
    double square = 0;
    for (double offS = -REACH_S; offS <= REACH_S; offS += STEP_S) {
      double likelihood = STEP_S * blows(blowsS, offS);
      for (Witness witness : middles) {
        likelihood *= witness.likelihood(offS);
      }
      double anywhere = WRONG / (2 * REACH_S) * likelihood;
      right += (1 - WRONG) * normal(offS, knownS) * likelihood;
      wrong += anywhere;
      off += anywhere * offS;
      square += anywhere * offS * offS;
    }
    double all = right + wrong;
    return all > 0 && wrong > 0 && !middles.isEmpty()
        ? new TrunkDoubt(wrong / all, off / wrong, Math.sqrt(square / all))
        : new TrunkDoubt(0, 0, 0);
  }

  boolean isDisbelieved() {
    return wrong > 0.5;
  }

  private static double blows(List<Double> blowsS, double offS) {
    double elsewhere = STRANGER / (2 * REACH_S);
    return Math.exp(
        blowsS.stream()
            .mapToDouble(b -> Math.log((1 - STRANGER) * normal(b - offS, BLOW_SD_S) + elsewhere))
            .average()
            .orElse(0));
  }

  private static Optional<Witness> middle(List<Witness> all) {
    Stream<Witness> sorted = all.stream().sorted(Comparator.comparingDouble(Witness::lateS));
    return sorted.skip(all.size() / 2).findFirst();
  }

  private static double normal(double off, double sd) {
    double spreads = off / sd;
    return Math.exp(-0.5 * spreads * spreads) / (sd * Math.sqrt(2 * Math.PI));
  }
}
