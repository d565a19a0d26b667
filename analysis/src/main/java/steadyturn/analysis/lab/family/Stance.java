package steadyturn.analysis.lab.family;

/**
 * How a family stands still: sizes of sway, and the rhythm of {@link
 * steadyturn.analysis.lab.curve.Sway}.
 *
 * @param mmPerS RMS speed of mid-hip along each level axis at address
 * @param degPerS RMS rate of each joint at address
 * @param up part of it up and down
 * @param finish how much more at the finish
 * @param haste by how much faster than the stance of the source it goes
 */
public record Stance(double mmPerS, double degPerS, double up, double finish, double haste) {

  static Stance draw(Dice dice) {
    return new Stance(
        dice.times(3, 8),
        dice.times(0.25, 0.9),
        dice.even(0.2, 0.5),
        dice.even(1.5, 3.5),
        dice.times(0.8, 1.8));
  }
}
