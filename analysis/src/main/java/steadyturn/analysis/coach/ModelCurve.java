package steadyturn.analysis.coach;

import java.util.List;

/**
 * One curve of the player beside the model's, on a time axis on which the key positions lie at the
 * same place in both: 0 takeaway, 75 top, 100 impact.
 *
 * @param place places on that axis
 * @param model mean of the model's swings, in the unit
 * @param player mean of the player's swings
 * @param spread standard deviation of the player's swings; NaN for a single one
 */
public record ModelCurve(
    String id, List<Double> place, List<Double> model, List<Double> player, List<Double> spread) {

  public ModelCurve {
    place = List.copyOf(place);
    model = List.copyOf(model);
    player = List.copyOf(player);
    spread = List.copyOf(spread);
    int n = place.size();
    if (model.size() != n || player.size() != n || spread.size() != n) {
      throw new IllegalArgumentException(
          id + ": " + n + " places, " + model.size() + ", " + player.size() + ", " + spread.size());
    }
  }
}
