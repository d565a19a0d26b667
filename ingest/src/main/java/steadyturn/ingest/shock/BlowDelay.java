package steadyturn.ingest.shock;

/**
 * How long the blow of a ball takes from the hands to the trunk. It runs through arms and spine,
 * about a metre of bone and soft parts; 2 +- 2 ms is our assumption, no measurement was at hand.
 */
public final class BlowDelay {

  /** By how much the trunk feels the blow later than the hands, s. */
  public static final double TRUNK_S = 0.002;

  /** Spread of that between people and blows, s (1 SD). */
  public static final double TRUNK_SD_S = 0.002;

  private BlowDelay() {}
}
