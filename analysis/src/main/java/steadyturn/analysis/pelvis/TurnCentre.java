package steadyturn.analysis.pelvis;

/**
 * The point about which a plane figure turned: the pole of a finite displacement (Reuleaux 1876).
 * For a move d = (dx, dy) and a turn psi about z, c = (dx - cot(psi/2) dy, dy + cot(psi/2) dx) / 2
 * from where the moved point was.
 */
public final class TurnCentre {

  private TurnCentre() {}

  /**
   * Pole relative to the first place of the moved point.
   *
   * @param turnRad turn about z; the pole runs to infinity as it goes to 0
   * @return x and y, in the unit of dx and dy
   */
  public static double[] pole(double dx, double dy, double turnRad) {
    double cot = 1 / Math.tan(turnRad / 2);
    return new double[] {(dx - cot * dy) / 2, (dy + cot * dx) / 2};
  }

  /** Pole along the target line, positive towards the target, m. */
  static double alongM(PelvisPose pose) {
    return pole(pose.slideM(), -pose.thrustM(), pose.turnRad())[0];
  }

  /** Pole across the target line, positive towards the ball, m. */
  static double acrossM(PelvisPose pose) {
    return -pole(pose.slideM(), -pose.thrustM(), pose.turnRad())[1];
  }
}
