package steadyturn.fusion.rest;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
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

  private WarmedUp() {}

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
