package steadyturn.analysis.lab.pendulum;

/**
 * The pendulum at one instant. Two nodes may share an instant where a torque sets in: accelerations
 * before and after differ.
 *
 * @param timeS from the start of the downswing
 * @param armRad 0 hanging, negative on the way down
 * @param cockRad between arm and club, club lagging
 */
public record PendulumNode(
    double timeS,
    double armRad,
    double armRateRadPerS,
    double armAccelRadPerS2,
    double cockRad,
    double cockRateRadPerS,
    double cockAccelRadPerS2) {}
