/**
 * Results as tables in the terminal. In: results. Out: text. Start at {@link TableReport}. Computes
 * nothing.
 */
@NullMarked
package steadyturn.cli.output.table;

import org.jspecify.annotations.NullMarked;
