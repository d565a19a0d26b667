package steadyturn.analysis.lab.family;

import java.util.Arrays;

/**
 * Skin and strap under one unit: a mass on a damped spring that stiffens, resting where the posture
 * pulls the skin. Axes are those of the segment.
 *
 * @param hz own frequency of the unloaded spring
 * @param damping 1 is critical
 * @param limitM way at which the spring is twice as stiff
 * @param limitRad the same in turning
 * @param tiltPerForce turn a force across the unit gives it, rad per m/s^2
 * @param pull where each posture pulls the unit: six numbers a posture (three m per rad, three rad
 *     per rad)
 */
public record SkinSpring(
    double hz,
    double damping,
    double limitM,
    double limitRad,
    double tiltPerForce,
    double[][] pull) {

  /** Draws the skin of a trunk, which is soft, or of a limb. */
  static SkinSpring draw(Dice dice, Size size, boolean trunk, double twist) {
    double hz = trunk ? dice.times(6, 14) : dice.times(16, 34);
    double[][] pull = new double[2][6];
    for (double[] posture : pull) {
      for (int i = 0; i < 6; i++) {
        posture[i] = i < 3 ? dice.about(0, size.mmPerRad / 1000) : dice.about(0, size.radPerRad);
      }
    }
    if (!trunk) {
      // the first posture of a limb is its roll, which the skin follows in part
      pull[0][3] = -twist * dice.times(0.6, 1.6);
    }
    return new SkinSpring(
        hz,
        dice.times(0.12, 0.5),
        size.limitMm / 1000,
        Math.toRadians(size.limitDeg),
        (trunk ? 8e-4 : 1e-4) * size.tilt * dice.about(0, 0.6),
        pull);
  }

  /**
   * What a family's skins are like.
   *
   * @param mmPerRad spread of the pull of a posture
   * @param radPerRad the same in turning
   * @param tilt how much the unit tilts under force, 1 is usual
   */
  public record Size(
      double mmPerRad, double radPerRad, double limitMm, double limitDeg, double tilt) {

    static Size draw(Dice dice) {
      return new Size(
          dice.times(2, 7),
          dice.times(0.008, 0.03),
          dice.even(4, 9),
          dice.even(2, 5),
          dice.times(0.4, 1.6));
    }
  }

  @Override
  public String toString() {
    return hz + " Hz, damping " + damping + ", pull " + Arrays.deepToString(pull);
  }
}
