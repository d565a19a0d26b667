package steadyturn.fusion.displace;

/**
 * The estimate of one swing.
 *
 * @param cost sum of squared, whitened contradictions to the anchors; about {@code rows} or less
 *     when all is as assumed
 * @param rows how many numbers the anchors gave
 */
public record SwingFit(UnitMotion motion, double cost, int rows) {}
