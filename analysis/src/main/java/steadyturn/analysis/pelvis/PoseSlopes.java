package steadyturn.analysis.pelvis;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Derivatives of the pose by all that errors reach, in closed form: a row a component of the pose,
 * and three columns each for a small turn and a move of the unit now (level axes), the same at
 * address, a turn of the mounting (pelvis axes), a move of the arm (unit axes); one for the aim.
 */
final class PoseSlopes {

  static final int INPUTS = 19;

  private final double[][] rows = new double[PelvisPose.SIZE][INPUTS];

  private PoseSlopes() {}

  /** Where unit and pelvis are at one instant, level axes. */
  record Sight(Quaternion qLevelUnit, Quaternion qLevelPelvis, Vector3 placeM) {}

  /**
   * At one sample.
   *
   * @param h +1 right-handed, -1 left-handed
   * @param armUnitM mid-hip from the unit, unit axes
   * @param aimRad turn of the target line against the address hip line, about z
   */
  static double[][] of(int h, Sight now, Sight then, Vector3 armUnitM, double aimRad) {
    Vector3 armNow = now.qLevelUnit.rotate(armUnitM);
    Vector3 armThen = then.qLevelUnit.rotate(armUnitM);
    Vector3 moved = now.placeM.plus(armNow).minus(then.placeM.plus(armThen));
    double along = PoseMath.azimuthRad(then.qLevelPelvis) + aimRad;
    Vector3 ball = new Vector3(Math.cos(along), Math.sin(along), 0);
    Vector3 target = Vector3.Z.cross(ball).times(h);
    PoseSlopes slopes = new PoseSlopes();
    slopes.byUnit(0, now, armNow, new Vector3[] {target, ball, Vector3.Z}, 1);
    slopes.byUnit(6, then, armThen, new Vector3[] {target, ball, Vector3.Z}, -1);
    Vector3 left = now.qLevelPelvis.rotate(Vector3.Y);
    double level = Math.hypot(left.x(), left.y());
    Vector3 tilt = new Vector3(left.x(), left.y(), 0).times(1 / (level * level));
    slopes.byTurn(0, 0, now, azimuth(left).times(h));
    slopes.byTurn(4, 0, now, tilt);
    slopes.byTurn(5, 0, now, new Vector3(left.y(), -left.x(), 0).times(h / level));
    // the line to the ball turns with the hips at address and with the aim
    Vector3 atAddress = azimuth(then.qLevelPelvis.rotate(Vector3.Y)).times(h);
    double slideByLine = -ball.dot(moved);
    double thrustByLine = target.dot(moved);
    slopes.byTurn(0, 6, then, atAddress.times(-1));
    slopes.byTurn(1, 6, then, atAddress.times(slideByLine));
    slopes.byTurn(2, 6, then, atAddress.times(thrustByLine));
    slopes.rows[1][INPUTS - 1] = h * slideByLine;
    slopes.rows[2][INPUTS - 1] = h * thrustByLine;
    return slopes.rows;
  }

  /** How the azimuth of the hip line goes with a turn about the level axes. */
  private static Vector3 azimuth(Vector3 left) {
    double level2 = left.x() * left.x() + left.y() * left.y();
    return new Vector3(-left.z() * left.x() / level2, -left.z() * left.y() / level2, 1);
  }

  /** Slide, thrust and lift by the unit's turn and place at one instant, and by the arm. */
  private void byUnit(int at, Sight sight, Vector3 armLevel, Vector3[] directions, int sign) {
    for (int row = 1; row <= 3; row++) {
      Vector3 direction = directions[row - 1].times(sign);
      add(row, at, armLevel.cross(direction));
      add(row, at + 3, direction);
      add(row, 15, sight.qLevelUnit.conjugate().rotate(direction));
    }
  }

  /** A component by a turn of the unit, level axes, and of the mounting, which turns it alike. */
  private void byTurn(int row, int at, Sight sight, Vector3 slope) {
    add(row, at, slope);
    add(row, 12, sight.qLevelPelvis.conjugate().rotate(slope));
  }

  private void add(int row, int at, Vector3 slope) {
    rows[row][at] += slope.x();
    rows[row][at + 1] += slope.y();
    rows[row][at + 2] += slope.z();
  }
}
