package steadyturn.analysis.compare;

import steadyturn.analysis.measure.Measure;

/**
 * How the measuring error of one swing splits into a part that all swings of a lesson share and a
 * part of its own. The shared part (unit errors, lever arm, alignment) cancels between clubs of the
 * same lesson, apart from a leftover; between lessons it does not cancel at all.
 *
 * @param pelvisShare shared part of the error variance of pelvis measures, 0..1
 * @param wristShare the same for wrist angles
 * @param timeShare the same for times and what is made of times
 * @param leftover what is left of the shared error between groups of one lesson, as a part of its
 *     standard deviation, because the groups move differently
 */
public record ErrorSplit(double pelvisShare, double wristShare, double timeShare, double leftover) {

  public ErrorSplit {
    for (double part : new double[] {pelvisShare, wristShare, timeShare, leftover}) {
      if (!(part >= 0 && part <= 1)) {
        throw new IllegalArgumentException("parts lie in 0..1, one was " + part);
      }
    }
  }

  /**
   * Our choice: 0.8 for the pelvis, because in simulated lessons of ten swings most of the error of
   * slide at impact was the same in all of them; 0.7 for wrist angles (heading between the units);
   * 0.3 for times, which depend on each swing's own noise. Leftover 0.1, because groups rarely
   * differ by more than a tenth in how far and how fast they move.
   */
  public static ErrorSplit defaults() {
    return new ErrorSplit(0.8, 0.7, 0.3, 0.1);
  }

  /** Shared part of the error variance of a measure. */
  public double sharedPart(Measure measure) {
    if (measure.id().startsWith("pelvis.")) {
      return pelvisShare;
    }
    return switch (measure) {
      case WRIST_COCK, WRIST_COCK_MAX, WRIST_FLEXION, WRIST_KEPT, WRIST_RATE -> wristShare;
      default -> timeShare;
    };
  }
}
