package steadyturn.analysis.coach;

import java.util.OptionalDouble;
import steadyturn.analysis.compare.MeasureAt;

/**
 * How far the player is from the model in one measure at one key position: player minus model, in
 * the unit of the measure.
 *
 * @param low lower end of the 95 % interval
 * @param high upper end
 * @param spreads the same in the player's own swing-to-swing spreads; empty under three swings
 */
public record ModelGap(
    MeasureAt what, double model, double player, double low, double high, OptionalDouble spreads) {

  public double difference() {
    return player - model;
  }
}
