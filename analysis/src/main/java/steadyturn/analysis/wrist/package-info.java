/**
 * How the lead wrist cocks, keeps its angle and lets go in one swing. In: forearm and hand streams
 * of a recording with its clocks aligned, a {@link steadyturn.analysis.swing.Swing}, the alignment
 * of the units. Out: {@link WristReading}: measures with intervals and the course of the angles.
 * Start at {@link WristReading}. Leaves the finding of swings to {@code analysis.swing}.
 */
@NullMarked
package steadyturn.analysis.wrist;

import org.jspecify.annotations.NullMarked;
