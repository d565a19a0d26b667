/**
 * Smooth functions of time with exact first and second derivatives, from which simulated movement
 * is built. In: steps, key values, seeds. Out: {@link TimeFunction}s. Start at {@link Steps}. Knows
 * neither bodies nor units.
 */
@NullMarked
package steadyturn.analysis.lab.curve;

import org.jspecify.annotations.NullMarked;
