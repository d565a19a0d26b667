/**
 * Finds swings and their events in the motion of worn units. In: aligned streams. Out: {@link
 * steadyturn.analysis.swing.Swing}s. Start at {@link SwingFinder}. Knows nothing of measures.
 */
@NullMarked
package steadyturn.analysis.swing.find;

import org.jspecify.annotations.NullMarked;
