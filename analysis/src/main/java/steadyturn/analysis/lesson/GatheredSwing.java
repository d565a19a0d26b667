package steadyturn.analysis.lesson;

import java.util.Optional;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.wear.pelvis.AimSight;

/**
 * A swing with what it needs, cut out of its recording, so that the recording itself can be let go.
 *
 * @param recording id of the recording it came from
 * @param pelvis the rests of the pelvis unit, and its samples between them
 * @param arm what forearm and hand said
 * @param steps what the wear steps before it said of the pelvis unit
 * @param aim the aim step as seen from this swing's address, where it could be carried so far
 */
record GatheredSwing(
    String recording,
    Swing swing,
    PelvisReading pelvis,
    ArmReading arm,
    PelvisSteps steps,
    Optional<AimSight> aim) {

  /** The same swing with what was noted of it since. */
  GatheredSwing noted(Swing again) {
    return new GatheredSwing(recording, swing.noted(again), pelvis, arm, steps, aim);
  }
}
