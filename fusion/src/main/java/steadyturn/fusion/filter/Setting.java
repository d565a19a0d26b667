package steadyturn.fusion.filter;

import java.util.Arrays;
import java.util.function.DoublePredicate;

/** What a record of settings asks of its numbers, in the order in which it names them. */
public final class Setting {

  private Setting() {}

  /** Refuses anything but numbers above 0; infinity may stand for a limit that there is not. */
  static void above0(String names, double... values) {
    require(v -> v > 0, names + " must be above 0, were ", values);
  }

  /** Refuses anything but finite numbers above 0. */
  public static void sizes(String names, double... values) {
    require(v -> v > 0 && Double.isFinite(v), names + " must be above 0 and finite, were ", values);
  }

  /** Refuses anything but numbers of 0 or more. */
  public static void atLeast0(String names, double... values) {
    require(v -> v >= 0, names + " must be 0 or more, were ", values);
  }

  private static void require(DoublePredicate holds, String message, double[] values) {
    if (!Arrays.stream(values).allMatch(holds)) {
      throw new IllegalArgumentException(message + Arrays.toString(values));
    }
  }
}
