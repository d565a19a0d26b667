/**
 * Says whether one set of swings differs from another by more than the player's own spread and the
 * tool's own error can explain. In: groups of {@link steadyturn.analysis.lesson.SwingResult}s. Out:
 * {@link Comparison}, a row a measure and key position with its verdict. Start at {@link
 * GroupComparison}. Swings are taken as independent of one another; leaves advice to {@code
 * analysis.coach} and printing to others.
 */
@NullMarked
package steadyturn.analysis.compare;

import org.jspecify.annotations.NullMarked;
