package steadyturn.analysis.lesson;

/**
 * Where the target line of a swing lies.
 *
 * @param targetFromHipsRad turn of the target line against the hip line at address, about the
 *     vertical
 * @param sdRad its spread
 * @param byStep whether an aim step had a say; else the hips are taken as square
 */
record Aim(double targetFromHipsRad, double sdRad, boolean byStep) {}
