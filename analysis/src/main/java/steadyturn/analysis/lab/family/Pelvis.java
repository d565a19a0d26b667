package steadyturn.analysis.lab.family;

import steadyturn.fusion.rotation.Vector3;

/**
 * Where mid-hip lies in a family's pelvises, by regressions the analysis does not use: of leg
 * length (Hara et al. 2016, Sci Rep 6:37707: 0.063 leg - 11 mm behind and 0.078 leg + 9 mm below
 * the front points, from memory) or of pelvis width (Bell et al. 1989: 0.22 width behind, 0.30
 * below, from memory), with a bias of the family and a spread of its players. Regressions of such
 * kinds miss adults by 12 +- 6 mm in all, and skin over the back points is 20 +- 11 mm thick
 * (Mantovani et al. 2016, Gait Posture 44:48-54).
 *
 * @param byLeg which regression
 * @param biasMm of the family, forward, left, up
 * @param spreadMm of its players, each way
 * @param skinMm mean of skin and case behind the back points
 * @param tiltDeg mean forward tilt of a standing pelvis
 * @param tiltSpreadDeg spread of it
 */
public record Pelvis(
    boolean byLeg,
    Vector3 biasMm,
    double spreadMm,
    double skinMm,
    double tiltDeg,
    double tiltSpreadDeg) {

  static Pelvis draw(Dice dice) {
    return new Pelvis(
        dice.happens(0.5),
        new Vector3(dice.about(0, 3), dice.about(0, 1), dice.about(0, 3)),
        dice.even(4, 8),
        dice.even(12, 24),
        dice.even(6, 14),
        dice.even(2.5, 4.5));
  }

  /** One player's pelvis; lengths in mm, as they are and as they were measured. */
  public record Drawn(
      double widthMm,
      double depthMm,
      double statureMm,
      double shownWidthMm,
      double shownDepthMm,
      double tiltRad,
      Vector3 midHipFromUnitM) {}

  Drawn player(Dice dice) {
    double widthMm = dice.about(238, 16);
    double depthMm = dice.about(152, 13);
    double statureMm = dice.about(1755, 85);
    double legMm = dice.about(0.52, 0.012) * statureMm;
    double behind = byLeg ? 0.063 * legMm - 11 : 0.22 * widthMm;
    double below = byLeg ? 0.078 * legMm + 9 : 0.30 * widthMm;
    double skin = Math.max(6, dice.about(skinMm, 6));
    Vector3 frontToHip = new Vector3(-behind, 0, -below).plus(biasMm).plus(stray(dice, spreadMm));
    Vector3 frontToUnit = new Vector3(-depthMm - skin, dice.about(0, 4), dice.about(0, 8));
    double tiltDeg = Math.max(0, Math.min(20, dice.about(tiltDeg(), tiltSpreadDeg)));
    return new Drawn(
        widthMm,
        depthMm,
        statureMm,
        Math.rint(widthMm + dice.about(0, 5)),
        Math.rint(depthMm + dice.about(0, 4)),
        Math.toRadians(tiltDeg),
        frontToHip.minus(frontToUnit).times(1e-3));
  }

  private static Vector3 stray(Dice dice, double mm) {
    return new Vector3(dice.about(0, mm), dice.about(0, 0.5 * mm), dice.about(0, mm));
  }
}
