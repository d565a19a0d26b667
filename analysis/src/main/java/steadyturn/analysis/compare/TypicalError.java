package steadyturn.analysis.compare;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * How much a player's value wanders from swing to swing when nothing has changed, in the unit of
 * the measure.
 *
 * <p>Hopkins 2000, Measures of reliability in sports medicine and science, Sports Med 30:1-15:
 * typical error = SD of the differences between two trials / sqrt 2, the within-subject standard
 * deviation. Weir 2005, Quantifying test-retest reliability using the intraclass correlation
 * coefficient and the SEM, J Strength Cond Res 19:231-240: SEM = SD sqrt(1 - ICC), smallest
 * detectable change = 1.96 sqrt 2 SEM. Both mean the same quantity; with many swings of one player
 * it is simply the standard deviation within groups.
 *
 * @param value standard deviation
 * @param freedom degrees of freedom it rests on
 */
public record TypicalError(double value, int freedom) {

  private static final double Z95 = 1.96;

  /** By degrees of freedom, as a season asks for few of them very often. */
  private static final Map<Integer, double[]> ENDS = new ConcurrentHashMap<>();

  public TypicalError {
    if (!(value >= 0) || freedom < 1) {
      throw new IllegalArgumentException(
          "typical error " + value + " with " + freedom + " degrees of freedom");
    }
  }

  /** 95 % interval of a standard deviation by the chi-square distribution: lower and upper end. */
  public static double[] interval(double spread, int freedom) {
    double[] ends = ENDS.computeIfAbsent(freedom, TypicalError::ends);
    return new double[] {spread * ends[0], spread * ends[1]};
  }

  /** The same of a standard deviation of 1. */
  private static double[] ends(int freedom) {
    var chi2 = new ChiSquaredDistribution(freedom);
    return new double[] {
      Math.sqrt(freedom / chi2.inverseCumulativeProbability(0.975)),
      Math.sqrt(freedom / chi2.inverseCumulativeProbability(0.025))
    };
  }

  /** Pooled over the player's groups, each about its own mean; groups under two swings drop out. */
  public static Optional<TypicalError> pooled(List<GroupSummary> groups) {
    double squares = 0;
    int freedom = 0;
    for (GroupSummary g : groups) {
      if (g.count() >= 2) {
        squares += g.spread() * g.spread() * (g.count() - 1);
        freedom += g.count() - 1;
      }
    }
    return freedom == 0
        ? Optional.empty()
        : Optional.of(new TypicalError(Math.sqrt(squares / freedom), freedom));
  }

  /** Smallest detectable change between two single swings: 1.96 sqrt 2 times the typical error. */
  public double detectableChange() {
    return Z95 * Math.sqrt(2) * value;
  }
}
