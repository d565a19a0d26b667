package steadyturn.fusion.displace;

import steadyturn.ingest.sample.UnitStream;

/**
 * The estimate of one swing: small to keep, and its motion, which is large, computed when asked
 * for.
 */
public final class SwingFit {

  private final UnitStream samples;
  private final UnitState state;
  private final double[][] covariance;
  private final double gravityMps2;
  private final double cost;
  private final int rows;
  private final boolean taught;

  SwingFit(
      UnitStream samples,
      UnitState state,
      double[][] covariance,
      double gravityMps2,
      double cost,
      int rows,
      boolean taught) {
    this.samples = samples;
    this.state = state;
    this.covariance = covariance;
    this.gravityMps2 = gravityMps2;
    this.cost = cost;
    this.rows = rows;
    this.taught = taught;
  }

  /** Attitude, velocity and place of every sample; one more strapdown pass. */
  public UnitMotion motion() {
    return new StrapdownMotion(Strapdown.run(samples, state, gravityMps2), covariance);
  }

  /**
   * Sum of squared, whitened contradictions to the anchors; about {@link #rows()} or less when all
   * is as assumed.
   */
  public double cost() {
    return cost;
  }

  /** How many numbers the anchors gave. */
  public int rows() {
    return rows;
  }

  /** Whether the swing agreed with the others well enough to teach the shared parameters. */
  public boolean taught() {
    return taught;
  }
}
