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
public record RestSway(double levelMps, double upMps, double lastingMps) {}
