package steadyturn.analysis.lab.family;

import steadyturn.analysis.lab.body.WristAxes;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The wrist a family's players have. Its two axes are square neither to each other nor to the
 * bones: over 10 deg and 35 deg off in the median of intact wrists (J Appl Biomech 2016, 33:12-23,
 * table 4); hand bones also turn about the forearm's length, by 17 deg under effort (Gupta and
 * Moosawi 2005, Clin Biomech 20:172-176, the second name from memory).
 *
 * @param flexOffDeg spread of the flexion axis about square, each way
 * @param cockOffDeg spread of the axis of cocking
 * @param play how much of a player's turning about the forearm's length there is, 1 is usual
 */
public record Wrist(double flexOffDeg, double cockOffDeg, double play) {

  static Wrist draw(Dice dice) {
    return new Wrist(dice.even(1.5, 5), dice.even(1.5, 6), 1);
  }

  Wrist loose(Dice dice) {
    return new Wrist(dice.even(4, 9), dice.even(5, 14), dice.even(1.5, 2.5));
  }

  WristAxes player(Dice dice) {
    return new WristAxes(off(dice, flexOffDeg, 1), off(dice, cockOffDeg, 2));
  }

  /** About the two other axes. */
  private static Quaternion off(Dice dice, double deg, int axis) {
    double a = Math.toRadians(dice.about(0, deg));
    double b = Math.toRadians(dice.about(0, deg));
    return Quaternion.fromRotationVector(axis == 1 ? new Vector3(a, 0, b) : new Vector3(a, b, 0));
  }
}
