package steadyturn.fusion.rest;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import steadyturn.fusion.attitude.RestBias;
import steadyturn.fusion.rotation.Vector3;

/**
 * How far the bias of a gyroscope has moved since the rest on the table, as the addresses after it
 * show: a player sways about each, but not the same way in all.
 */
public final class WarmedUp {

  /** Sway leaves so much in the mean rate of an address of a second (our assumption), rad/s. */
  private static final double SWAY_RAD_PER_S = Math.toRadians(0.35);

  /** It sways no less, whatever a few addresses show, rad/s. */
  private static final double LEAST_SWAY_RAD_PER_S = Math.toRadians(0.1);

  /** Addresses from which the sway is read, rather than assumed. */
  private static final int ENOUGH = 3;

  /**
   * So many spreads of the mean are left to sway; only what goes beyond opens the bias, bit by bit.
   */
  private static final double SURE = 2.5;

  /** The same where the largest of many differences is taken. */
  private static final double SURE_OF_MOST = 3;

  /** Spread of a median of normal values, in spreads of their mean. */
  private static final double OF_MEDIAN = 1.25;

  private WarmedUp() {}

  /**
   * How far the bias moved from one swing to another, as the quiet half seconds around them show,
   * which are more than the addresses; half of it either way, rad/s.
   *
   * @param around what was quiet around each swing
   */
  public static double amongRadPerS(List<RestBias.Quiet> around) {
    double most = 0;
    for (RestBias.Quiet a : around) {
      for (RestBias.Quiet b : around) {
        double sure =
            SURE_OF_MOST
                * OF_MEDIAN
                * SWAY_RAD_PER_S
                * Math.sqrt(1.0 / a.blocks() + 1.0 / b.blocks());
        Vector3 apart = a.radPerS().minus(b.radPerS());
        for (int axis = 0; axis < 3; axis++) {
          most = Math.max(most, apart.get(axis) * apart.get(axis) - sure * sure);
        }
      }
    }
    return Math.sqrt(most) / 2;
  }

  /**
   * How far it moved since the rest on the table, as the same moments show together, rad/s.
   *
   * @param around what was quiet around each swing
   * @param tableRadPerS the rate on the table
   */
  public static double sinceRadPerS(List<RestBias.Quiet> around, Vector3 tableRadPerS) {
    int blocks = around.stream().mapToInt(RestBias.Quiet::blocks).sum();
    Vector3 sum = Vector3.ZERO;
    for (RestBias.Quiet each : around) {
      sum = sum.plus(each.radPerS().times(each.blocks()));
    }
    double sure = SURE * OF_MEDIAN * SWAY_RAD_PER_S / Math.sqrt(Math.max(1, blocks));
    Vector3 off = blocks == 0 ? Vector3.ZERO : sum.times(1.0 / blocks).minus(tableRadPerS);
    return DoubleStream.of(off.x(), off.y(), off.z())
        .map(axis -> Math.sqrt(Math.max(0, axis * axis - sure * sure)))
        .max()
        .orElse(0);
  }

  /**
   * The most that one axis has moved, rad/s; 0 where sway can be all of it.
   *
   * @param ratesRadPerS mean rates of addresses, unit axes
   * @param tableRadPerS the rate on the table
   */
  public static double byRadPerS(List<Vector3> ratesRadPerS, Vector3 tableRadPerS) {
    int n = ratesRadPerS.size();
    double[] means =
        IntStream.range(0, 3)
            .mapToDouble(
                axis -> ratesRadPerS.stream().mapToDouble(v -> v.get(axis)).average().orElse(0))
            .toArray();
    double squares =
        IntStream.range(0, 3)
            .mapToDouble(
                axis ->
                    ratesRadPerS.stream()
                        .mapToDouble(v -> Math.pow(v.get(axis) - means[axis], 2))
                        .sum())
            .sum();
    double seen = Math.max(LEAST_SWAY_RAD_PER_S, Math.sqrt(squares / (3 * Math.max(1, n - 1))));
    double sdOfMean =
        (n < ENOUGH ? Math.max(seen, SWAY_RAD_PER_S) : seen) / Math.sqrt(Math.max(1, n));
    return n == 0
        ? 0
        : DoubleStream.of(0, 1, 2)
            .map(axis -> Math.abs(means[(int) axis] - tableRadPerS.get((int) axis)))
            .map(off -> Math.sqrt(Math.max(0, off * off - Math.pow(SURE * sdOfMean, 2))))
            .max()
            .orElse(0);
  }
}
