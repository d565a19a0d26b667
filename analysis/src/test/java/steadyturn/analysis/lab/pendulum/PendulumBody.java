package steadyturn.analysis.lab.pendulum;

/**
 * Arm and club.
 *
 * @param armLengthM hub to wrist
 * @param armInertiaKgM2 arm about the hub
 * @param armMomentKgM mass of the arm times the distance of its centre from the hub
 * @param clubMassKg mass of the club
 * @param clubLengthM wrist to club head
 * @param clubMomentKgM mass of the club times the distance of its centre from the wrist
 * @param clubInertiaKgM2 club about the wrist; cannot be below moment squared over mass
 * @param gravityMps2 0 for a swing without weight
 */
public record PendulumBody(
    double armLengthM,
    double armInertiaKgM2,
    double armMomentKgM,
    double clubMassKg,
    double clubLengthM,
    double clubMomentKgM,
    double clubInertiaKgM2,
    double gravityMps2) {

  public PendulumBody {
    double least = clubMomentKgM * clubMomentKgM / clubMassKg;
    if (!(clubInertiaKgM2 >= least)) {
      throw new IllegalArgumentException(
          "a club of moment "
              + clubMomentKgM
              + " kg m and mass "
              + clubMassKg
              + " kg has at least "
              + least
              + " kg m^2 about the wrist, was "
              + clubInertiaKgM2);
    }
  }

  /**
   * A man's arm and a driver: 0.62 m, 1.15 kg m^2; 0.40 kg, 1.1 m, 0.33 kg m, 0.352 kg m^2; arm
   * moment 7.3 kg times 0.31 m (a set that circulates in open code, its club inertia put right).
   */
  public static PendulumBody driver() {
    return new PendulumBody(0.62, 1.15, 2.263, 0.40, 1.1, 0.33, 0.352, 9.81);
  }

  /** The same without weight. */
  public PendulumBody weightless() {
    return new PendulumBody(
        armLengthM,
        armInertiaKgM2,
        armMomentKgM,
        clubMassKg,
        clubLengthM,
        clubMomentKgM,
        clubInertiaKgM2,
        0);
  }

  /** Arm about the hub, the club's mass carried at the wrist: A, kg m^2. */
  double wholeArm() {
    return armInertiaKgM2 + clubMassKg * armLengthM * armLengthM;
  }

  /** Coupling B = moment of the club times length of the arm, kg m^2. */
  double coupling() {
    return clubMomentKgM * armLengthM;
  }

  /** Both turning as one at a cock: J = A + C + 2 B cos b, kg m^2. */
  double locked(double cockRad) {
    return wholeArm() + clubInertiaKgM2 + 2 * coupling() * Math.cos(cockRad);
  }

  /** Torque of weight on the arm's angle, club hung at the wrist, N m; towards hanging. */
  double armWeight(double armRad) {
    return -gravityMps2 * (armMomentKgM + clubMassKg * armLengthM) * Math.sin(armRad);
  }

  /** Torque of weight on the club's angle, N m. */
  double clubWeight(double clubRad) {
    return -gravityMps2 * clubMomentKgM * Math.sin(clubRad);
  }

  /** Energy of motion and height, J. */
  double energyJ(double armRad, double armRate, double cockRad, double cockRate) {
    double clubRate = armRate - cockRate;
    double motion =
        0.5 * wholeArm() * armRate * armRate
            + 0.5 * clubInertiaKgM2 * clubRate * clubRate
            + coupling() * Math.cos(cockRad) * armRate * clubRate;
    double height =
        -gravityMps2 * (armMomentKgM + clubMassKg * armLengthM) * Math.cos(armRad)
            - gravityMps2 * clubMomentKgM * Math.cos(armRad - cockRad);
    return motion + height;
  }

  /** Speed of the club head, m/s. */
  double headSpeedMps(double armRate, double cockRad, double cockRate) {
    double clubRate = armRate - cockRate;
    double arm = armLengthM * armRate;
    double club = clubLengthM * clubRate;
    return Math.sqrt(arm * arm + club * club + 2 * arm * club * Math.cos(cockRad));
  }
}
