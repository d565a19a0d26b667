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
 * @param wornDepthMm from the middle of the front points to the outer face of the worn pelvis unit
 */
public record Player(
    String id,
    Handedness handed,
    OptionalDouble pelvisWidthMm,
    OptionalDouble pelvisDepthMm,
    OptionalDouble statureMm,
    OptionalDouble wornDepthMm) {

  /** A player of whom no depth was taken over the worn unit. */
  public Player(
      String id,
      Handedness handed,
      OptionalDouble pelvisWidthMm,
      OptionalDouble pelvisDepthMm,
      OptionalDouble statureMm) {
    this(id, handed, pelvisWidthMm, pelvisDepthMm, statureMm, OptionalDouble.empty());
  }

  /** A player of whom only the label and the side are known. */
  public static Player unmeasured(String id, Handedness handed) {
    return new Player(
        id, handed, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
  }
}
