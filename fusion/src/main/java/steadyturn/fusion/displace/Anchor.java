package steadyturn.fusion.displace;

import java.util.List;

/**
 * A stretch in which the body's velocity and rate are known to be near zero, with the spread a
 * swaying person leaves.
 *
 * @param startS start, s on the recording's common axis
 * @param endS end, s
 * @param velocitySdMps spread of the velocity along each level axis, m/s, correlated over {@link
 *     #SWAY_CORRELATION_S}
 * @param upSdMps the same up and down
 * @param rateSdRadPerS spread of the rate, rad/s, correlated likewise
 * @param driftSdMps spread of a velocity that stays the same through the whole stretch, m/s; 0 for
 *     a true rest
 */
public record Anchor(
    double startS,
    double endS,
    double velocitySdMps,
    double upSdMps,
    double rateSdRadPerS,
    double driftSdMps) {

  /** Sway of a standing person stays alike for about this long, s (our assumption). */
  public static final double SWAY_CORRELATION_S = 0.3;

  /** Sway of a still address, m/s (our assumption). */
  public static final double ADDRESS_SWAY_MPS = 0.006;

  private static final double MOVING_SWAY_MPS = 0.05;

  public Anchor {
    if (!(endS > startS)
        || !(Math.min(velocitySdMps, upSdMps) > 0)
        || !(rateSdRadPerS > 0)
        || !(driftSdMps >= 0)) {
      throw new IllegalArgumentException(
          "an anchor needs endS > startS (s) and spreads above 0 (m/s, m/s, rad/s, m/s), was "
              + List.of(startS, endS, velocitySdMps, upSdMps, rateSdRadPerS, driftSdMps));
    }
  }

  /** A stretch in which the body may move as fast up and down as along the ground. */
  public Anchor(
      double startS, double endS, double velocitySdMps, double rateSdRadPerS, double driftSdMps) {
    this(startS, endS, velocitySdMps, velocitySdMps, rateSdRadPerS, driftSdMps);
  }

  /**
   * Still address: velocity within 6 mm/s, rate within 0.8 deg/s. Up and down 2 mm/s, as the legs
   * carry the body (our assumption).
   */
  public static Anchor address(double startS, double endS) {
    return new Anchor(startS, endS, ADDRESS_SWAY_MPS, 0.002, Math.toRadians(0.8), 0);
  }

  /**
   * Held finish: velocity within 15 mm/s (a third of it up and down, as at address), rate within
   * 2.5 deg/s.
   */
  public static Anchor finish(double startS, double endS) {
    return new Anchor(startS, endS, 0.015, 0.005, Math.toRadians(2.5), 0);
  }

  /** The same stretch on a body that sways at least so fast. */
  public Anchor swaying(RestSway least) {
    double levelMps = Math.max(velocitySdMps, least.spreadMps());
    double upMps = Math.max(upSdMps, Math.min(levelMps, least.upMps()));
    return new Anchor(startS, endS, levelMps, upMps, rateSdRadPerS, driftSdMps);
  }

  /** The same stretch on a body that may rise as fast as it sways. */
  public Anchor risingToo() {
    return new Anchor(startS, endS, velocitySdMps, rateSdRadPerS, driftSdMps);
  }

  /**
   * The same stretch on a body that does not stand still: it drifts at an unknown steady speed and
   * sways more than a person at rest, a third of both up and down.
   */
  public Anchor drifting(double driftMps) {
    return new Anchor(
        startS, endS, MOVING_SWAY_MPS, MOVING_SWAY_MPS / 3, 2 * rateSdRadPerS, driftMps);
  }

  /** The same stretch on a body that may also drift at a steady speed of at least such a spread. */
  public Anchor strayingBy(double driftMps) {
    return new Anchor(
        startS, endS, velocitySdMps, upSdMps, rateSdRadPerS, Math.max(driftSdMps, driftMps));
  }
}
