package steadyturn.analysis.lab.truth;

/**
 * How the pelvis truly stands against its mean over 250..30 ms before the takeaway, with the signs
 * of the measures (free of handedness).
 *
 * @param turnRad azimuth of the hip line, positive towards the target
 * @param slideM mid-hip along the target line, positive towards the target
 * @param thrustM mid-hip towards the ball
 * @param liftM mid-hip up
 * @param tiltRad forward, about the hip line
 * @param sideTiltRad lead hip up
 */
public record PelvisTruth(
    double turnRad,
    double slideM,
    double thrustM,
    double liftM,
    double tiltRad,
    double sideTiltRad) {

  PelvisTruth minus(PelvisTruth o) {
    return new PelvisTruth(
        turnRad - o.turnRad,
        slideM - o.slideM,
        thrustM - o.thrustM,
        liftM - o.liftM,
        tiltRad - o.tiltRad,
        sideTiltRad - o.sideTiltRad);
  }
}
