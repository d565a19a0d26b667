package steadyturn.ingest.sample;

import java.util.OptionalDouble;

/**
 * Facts of the player that the measures need; sizes in mm, empty when not taken.
 *
 * @param id label of the player in the archive, letters and digits
 * @param handed which side the player swings from
 * @param pelvisWidthMm distance between the two front hip-bone points (ASIS)
 * @param pelvisDepthMm from the middle of those to the middle of the two back points (PSIS)
 * @param statureMm standing height
 */
public record Player(
    String id,
    Handedness handed,
    OptionalDouble pelvisWidthMm,
    OptionalDouble pelvisDepthMm,
    OptionalDouble statureMm) {

  /** A player of whom only the label and the side are known. */
  public static Player unmeasured(String id, Handedness handed) {
    return new Player(
        id, handed, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
  }
}
