/**
 * Brings units that each run on a clock of their own onto one time axis. In: a {@link
 * steadyturn.ingest.sample.Recording} whose start times are right to some tens of milliseconds.
 * Out: {@link AlignedRecording}: the same samples on the pelvis unit's clock, with a {@link
 * ClockFit} a unit and its honest spread. Start at {@link CommonClock}. Shocks that several units
 * feel give the pairs; where there are none, the common movement of forearm and hand. Knows nothing
 * of swings.
 */
@NullMarked
package steadyturn.ingest.clock;

import org.jspecify.annotations.NullMarked;
