package steadyturn.analysis.lab.family;

import steadyturn.analysis.lab.unit.UnitGrade;

/**
 * The units a family wears.
 *
 * @param grade sizes of errors before the next two
 * @param noise times the usual noise
 * @param bias times the usual biases
 * @param rateHz samples a second
 * @param lowPassHz where its own filter lets half the power through; 0 for none
 * @param jitterS spread of its time stamps
 * @param lossPct samples lost
 * @param startErrorS how well the starts of the units are known to one another
 */
public record Chip(
    UnitGrade grade,
    double noise,
    double bias,
    double rateHz,
    double lowPassHz,
    double jitterS,
    double lossPct,
    double startErrorS) {

  static Chip draw(Dice dice) {
    double rateHz = dice.one(200.0, 250.0, 400.0, 500.0, 500.0, 1000.0);
    return new Chip(
        UnitGrade.CALIBRATED,
        dice.times(0.6, 1.6),
        dice.times(0.7, 1.4),
        rateHz,
        dice.happens(0.5) ? 0 : dice.times(0.25, 0.42) * rateHz,
        dice.times(5e-5, 4e-4),
        dice.times(0.03, 0.4),
        dice.times(2e-4, 1e-3));
  }

  /** Loud, biased, slow units that lose packets. */
  static Chip poor(Dice dice) {
    double rateHz = dice.one(100.0, 200.0, 250.0);
    return new Chip(
        UnitGrade.RAW,
        dice.times(1.5, 3),
        dice.times(1, 1.6),
        rateHz,
        dice.happens(0.3) ? 0 : dice.times(0.25, 0.42) * rateHz,
        dice.times(2e-4, 1e-3),
        dice.times(0.3, 2),
        dice.times(1e-3, 5e-3));
  }

  /** Quiet and fast ones. */
  static Chip fine(Dice dice) {
    return new Chip(
        UnitGrade.CALIBRATED,
        dice.times(0.3, 0.5),
        dice.times(0.2, 0.6),
        1000,
        dice.even(200, 400),
        2e-5,
        0.02,
        dice.times(5e-5, 3e-4));
  }
}
