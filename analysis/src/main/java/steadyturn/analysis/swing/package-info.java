/**
 * What a swing is: its kind, its events in time and how sure each time is. In: times. Out: {@link
 * Swing}s with their {@link EventTime}s. Start at {@link Swing}; {@code analysis.swing.find} finds
 * them. Knows nothing of displacement, files or advice.
 */
@NullMarked
package steadyturn.analysis.swing;

import org.jspecify.annotations.NullMarked;
