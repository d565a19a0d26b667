package steadyturn.fusion.displace;

/**
 * How a body moves in a rest.
 *
 * @param levelMps spread of its velocity along each level axis, by how that changes within a tenth
 *     of a second, m/s
 * @param upMps the same up and down, m/s
 * @param lastingMps RMS of what lasts for half a second of its velocity along the ground, m/s: sway
 *     goes there and back, a drift goes on
 */
public record RestSway(double levelMps, double upMps, double lastingMps) {

  /**
   * A velocity of spread 1 along each of two axes, alike over 0.3 s, has means over half a second
   * of this RMS: sqrt(2 x 2 k (1 - k (1 - exp(-1 / k)))) with k = 0.3 / 0.5.
   */
  private static final double LASTING_OF_TWO_AXES = 1.11;

  /**
   * Spread of the velocity along each level axis by its quick changes and by what lasts, m/s:
   * weight that goes from foot to foot changes slowly and yet moves fast.
   */
  double spreadMps() {
    return Math.max(levelMps, lastingMps / LASTING_OF_TWO_AXES);
  }
}
