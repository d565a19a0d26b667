package steadyturn.ingest.clock;

/**
 * A sudden change of the acceleration: an impact or a knock.
 *
 * @param timeS its onset on the unit's clock, s
 * @param stepMps2 size of the change within some 2 ms
 */
record Shock(double timeS, double stepMps2) {}
