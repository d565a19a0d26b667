package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Player;

/**
 * A player's sizes as far as a body has them. The bounds hold children from about six years and the
 * largest adults: adults' front hip-bone points lie 240 +- 20 mm apart and 150 +- 15 mm before the
 * back ones, children's 180 and 110 (from memory, of gait laboratories' normal values; here widened
 * to what six spreads leave).
 *
 * @param player with the sizes that can be
 * @param refused why others were taken out
 */
public record CredibleSizes(Player player, List<Reason> refused) {

  private static final double[] WIDTH_MM = {130, 380};
  private static final double[] DEPTH_MM = {70, 270};
  private static final double[] STATURE_MM = {950, 2300};
  private static final double[] WORN_DEPTH_MM = {80, 330};

  /** No pelvis is so much deeper than wide. */
  private static final double MOST_DEPTH_PER_WIDTH = 1.05;

  public CredibleSizes {
    refused = List.copyOf(refused);
  }

  public static CredibleSizes of(Player given) {
    List<Reason> refused = new ArrayList<>();
    OptionalDouble width = kept("width", given.pelvisWidthMm(), WIDTH_MM, refused);
    OptionalDouble depth = kept("depth", given.pelvisDepthMm(), DEPTH_MM, refused);
    OptionalDouble stature = kept("stature", given.statureMm(), STATURE_MM, refused);
    OptionalDouble worn = kept("worn-depth", given.wornDepthMm(), WORN_DEPTH_MM, refused);
    if (width.isPresent()
        && depth.isPresent()
        && depth.getAsDouble() > MOST_DEPTH_PER_WIDTH * width.getAsDouble()) {
      refused.add(Reason.of(BodyReason.SIZES_EXCHANGED, width.getAsDouble(), depth.getAsDouble()));
      width = OptionalDouble.empty();
      depth = OptionalDouble.empty();
    }
    return refused.isEmpty()
        ? new CredibleSizes(given, refused)
        : new CredibleSizes(
            new Player(given.id(), given.handed(), width, depth, stature, worn), refused);
  }

  private static OptionalDouble kept(
      String size, OptionalDouble mm, double[] ends, List<Reason> refused) {
    boolean can = mm.isEmpty() || (mm.getAsDouble() >= ends[0] && mm.getAsDouble() <= ends[1]);
    if (!can) {
      refused.add(Reason.of(BodyReason.SIZE, size, mm.getAsDouble(), ends[0], ends[1]));
    }
    return can ? mm : OptionalDouble.empty();
  }
}
