/**
 * A simulated player: joints, sizes, style, and the chains from the pelvis to each unit. In: joint
 * angles over time. Out: what a unit at a body point feels, and the true pose. Start at {@link
 * BodyMotion}. Everything is built for a right-handed player; the mirror comes with the unit.
 */
@NullMarked
package steadyturn.analysis.lab.body;

import org.jspecify.annotations.NullMarked;
