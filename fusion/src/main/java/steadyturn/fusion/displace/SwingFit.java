package steadyturn.fusion.displace;

import java.util.Optional;
import steadyturn.fusion.strapdown.Strapdown;
import steadyturn.fusion.strapdown.StrapdownMotion;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.strapdown.UnitState;

/**
 * The estimate of one swing: small to keep, and its motion, which is large, computed when asked
 * for.
 *
 * @param covariance of the state's parameters
 * @param cost sum of squared, whitened contradictions to the anchors; about {@code rows} or less
 *     when all is as assumed
 * @param rows how many numbers the anchors gave
 * @param taught whether the swing agreed with the others well enough to teach the shared parameters
 * @param sway how lively its stillest rest was; none where none was seen
 */
public record SwingFit(
    SwingSpan span,
    UnitState state,
    double[][] covariance,
    double gravityMps2,
    double cost,
    int rows,
    boolean taught,
    Optional<RestSway> sway) {

  /** A cost so many standard deviations of a chi-square above its expectation is no chance. */
  static final double OUTLIER = 6;

  /** Whether the rests contradict one another more than what was assumed of them allows. */
  public boolean contradictsItself() {
    return excess(cost, rows) > OUTLIER;
  }

  static double excess(double cost, int rows) {
    return (cost - rows) / Math.sqrt(2.0 * rows);
  }

  /** Attitude, velocity and place of every sample; one more strapdown pass. */
  public UnitMotion motion() {
    return new StrapdownMotion(Strapdown.run(span.samples(), state, gravityMps2), covariance);
  }
}
