package steadyturn.analysis.lab.family;

import steadyturn.analysis.lab.body.SkinSpring;

/**
 * What a family's skins are like.
 *
 * @param mmPerRad spread of the pull of a posture
 * @param radPerRad the same in turning
 * @param limitMm way at which the skin is twice as stiff
 * @param limitDeg the same in turning
 * @param tilt how much the unit tilts under force, 1 is usual
 */
public record Skin(
    double mmPerRad, double radPerRad, double limitMm, double limitDeg, double tilt) {

  static Skin draw(Dice dice) {
    return new Skin(
        dice.times(2, 7),
        dice.times(0.008, 0.03),
        dice.even(4, 9),
        dice.even(2, 5),
        dice.times(0.4, 1.6));
  }

  /**
   * Draws the skin of one player's trunk, which is soft, or limb.
   *
   * @param twist part of the roll, a limb's first posture, that the skin does not follow
   */
  SkinSpring player(Dice dice, boolean trunk, double twist) {
    double hz = trunk ? dice.times(6, 14) : dice.times(16, 34);
    double[][] pull = new double[2][6];
    for (double[] posture : pull) {
      for (int i = 0; i < 6; i++) {
        posture[i] = i < 3 ? dice.about(0, mmPerRad / 1000) : dice.about(0, radPerRad);
      }
    }
    if (!trunk) {
      pull[0][3] = -twist * dice.times(0.6, 1.6);
    }
    return new SkinSpring(
        hz,
        dice.times(0.12, 0.5),
        limitMm / 1000,
        Math.toRadians(limitDeg),
        (trunk ? 8e-4 : 1e-4) * tilt * dice.about(0, 0.6),
        pull);
  }
}
