package steadyturn.analysis.limits;

import steadyturn.analysis.measure.MeasureValue;

/**
 * A unit's rates and times may be off by a part that nothing tells. What was counted by them is off
 * by the same part; shares and ratios are not. What is estimated of the pelvis has it in its own
 * spreads already, by the priors of its unit.
 *
 * @param part standard deviation
 */
public record ScaleDoubt(double part) {

  /** Less is no doubt worth carrying. */
  private static final double LEAST = 0.002;

  /**
   * Forearm and hand turn so far on the way to the top (our choice, from simulated swings), deg.
   */
  private static final double ARM_TURNS_DEG = 150;

  /** The value with that in its interval. */
  public MeasureValue in(MeasureValue value) {
    double size = Math.abs(value.value());
    double of =
        switch (value.measure()) {
          case WRIST_COCK, WRIST_COCK_MAX, WRIST_FLEXION -> ARM_TURNS_DEG;
          case WRIST_RELEASE_PART, WRIST_KEPT, TEMPO_RATIO -> 0;
          default -> value.measure().id().startsWith("pelvis.") ? 0 : size;
        };
    return part < LEAST || of == 0 ? value : value.widened(part * of);
  }
}
