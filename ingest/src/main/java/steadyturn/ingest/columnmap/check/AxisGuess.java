package steadyturn.ingest.columnmap.check;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.UnitColumns;

/**
 * A guess at what the gyroscope columns really are: which mapped axis stands for x, y and z, with
 * which sign, in which unit.
 *
 * @param from mapped axis (0, 1, 2) that is really x, y, z
 * @param sign +1 or -1 for each
 * @param scale what the mapped rates have to be multiplied by
 */
record AxisGuess(List<Integer> from, List<Integer> sign, double scale) {

  private static final int[][] ORDERS = {
    {0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}
  };
  private static final double DEG_PER_RAD = 180 / Math.PI;

  AxisGuess {
    from = List.copyOf(from);
    sign = List.copyOf(sign);
  }

  /** All orders and signs of three axes, in the unit of the map and in the two mixed-up ones. */
  static List<AxisGuess> all() {
    List<AxisGuess> guesses = new ArrayList<>();
    for (double scale : new double[] {1, DEG_PER_RAD, 1 / DEG_PER_RAD}) {
      for (int[] order : ORDERS) {
        for (int signs = 0; signs < 8; signs++) {
          guesses.add(
              new AxisGuess(
                  List.of(order[0], order[1], order[2]),
                  List.of(1 - 2 * (signs & 1), 1 - (signs & 2), 1 - (signs & 4) / 2),
                  scale));
        }
      }
    }
    return guesses;
  }

  /** The guess that the map is right. */
  static AxisGuess asMapped() {
    return new AxisGuess(List.of(0, 1, 2), List.of(1, 1, 1), 1);
  }

  /** How much of the map it overturns: unit, order, signs. */
  int changes() {
    int changes = scale == 1 ? 0 : 1;
    changes += keepsOrder() ? 0 : 2;
    return changes + (flips().size() == 2 && keepsOrder() ? 1 : flips().size());
  }

  private boolean keepsOrder() {
    return from.equals(List.of(0, 1, 2));
  }

  private List<Integer> flips() {
    return IntStream.range(0, 3).filter(axis -> sign.get(axis) < 0).boxed().toList();
  }

  /** What is likely wrong, and what to write in the map instead. */
  String told(UnitColumns unit) {
    List<String> sentences = new ArrayList<>();
    if (scale > 1) {
      sentences.add("gyro rates are about 57 times too small; gyro_unit is likely rad/s.");
    } else if (scale < 1) {
      sentences.add("gyro rates are about 57 times too large; gyro_unit is likely deg/s.");
    }
    List<Integer> flips = flips();
    if (!keepsOrder()) {
      sentences.add("gyroscope and accelerometer axes do not belong together; try");
      sentences.add(gyro(unit) + ", or reorder accel instead.");
    } else if (flips.size() == 1) {
      sentences.add(
          "the sign of gyro " + name(flips.get(0)) + " is likely wrong; try " + gyro(unit) + ".");
    } else if (flips.size() == 2) {
      int kept = 3 - flips.get(0) - flips.get(1);
      String others = name(flips.get(0)) + " and " + name(flips.get(1));
      sentences.add("the sign of accel " + name(kept) + " is likely wrong, or the signs of gyro");
      sentences.add(others + "; try " + accelWithout(unit, kept) + ".");
    } else if (flips.size() == 3) {
      sentences.add("the signs of all gyro axes are likely wrong; try " + gyro(unit) + ".");
    }
    return String.join(" ", sentences);
  }

  private static String name(int axis) {
    return "xyz".substring(axis, axis + 1);
  }

  private String gyro(UnitColumns unit) {
    MappedVector gyro = unit.gyro().orElseThrow();
    return written(
        gyro.key(), axis -> gyro.xyz().get(from.get(axis)).turned(sign.get(axis)).written());
  }

  private static String accelWithout(UnitColumns unit, int flipped) {
    MappedVector accel = unit.accel().orElseThrow();
    return written(
        accel.key(), axis -> accel.xyz().get(axis).turned(axis == flipped ? -1 : 1).written());
  }

  private static String written(String key, IntFunction<String> column) {
    return IntStream.range(0, 3)
        .mapToObj(column)
        .collect(Collectors.joining(", ", key + " = [", "]"));
  }
}
