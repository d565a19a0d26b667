/**
 * How units sit on the body: the turn from unit axes to body axes, where mid-hip lies from the
 * pelvis unit, how forearm and hand units agree; here what both share, a room each for pelvis and
 * wrist. In: player facts, the nominal mounting, wear steps. Out: {@link StepResult}s. Start at
 * {@link StepResult}. Knows nothing of swings. No unit is taken to sit exactly as drawn: every
 * result carries its spread.
 */
@NullMarked
package steadyturn.fusion.wear;

import org.jspecify.annotations.NullMarked;
