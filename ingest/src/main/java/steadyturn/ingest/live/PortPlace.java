package steadyturn.ingest.live;

/**
 * How a unit is connected.
 *
 * @param number which of several units behind its port, from 1 on; 0 for the only one
 * @param mayConfigure whether a person allowed that the unit is changed
 */
public record PortPlace(int number, boolean mayConfigure) {

  /** The only unit of its port, left as it is. */
  public static final PortPlace ALONE = new PortPlace(0, false);
}
