/**
 * Rehearsals and how well each came out. In: recordings of drills. Out: {@link DrillScore}s. Start
 * at {@link HalfSwings} and {@link SlowTurns}. Gives no advice.
 */
@NullMarked
package steadyturn.analysis.coach.drill;

import org.jspecify.annotations.NullMarked;
