/**
 * Cuts a recording into swings and finds the key positions of each. In: the recording's streams.
 * Out: {@link Swing}s with their {@link EventTime}s. Start at {@link SwingFinder}. Knows nothing of
 * displacement, files or advice.
 */
@NullMarked
package steadyturn.analysis.swing;

import org.jspecify.annotations.NullMarked;
