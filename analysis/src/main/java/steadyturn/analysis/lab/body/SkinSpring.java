package steadyturn.analysis.lab.body;

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
    double[][] pull) {}
