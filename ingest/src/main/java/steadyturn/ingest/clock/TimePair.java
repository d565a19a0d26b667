package steadyturn.ingest.clock;

/**
 * One event seen on two clocks.
 *
 * @param timeS on the unit's clock, s
 * @param laterS the same event's time on the other clock minus timeS, s
 * @param sdS standard deviation of laterS, s
 */
record TimePair(double timeS, double laterS, double sdS) {}
