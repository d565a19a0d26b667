package steadyturn.ingest.shock;

/**
 * A sudden change of the acceleration: an impact or a knock.
 *
 * @param timeS its onset on the unit's clock, s
 * @param sizeMps2 size of the sudden change
 * @param clarity how many times the change is larger than what counts as one, 1 and more
 */
public record Shock(double timeS, double sizeMps2, double clarity) {}
