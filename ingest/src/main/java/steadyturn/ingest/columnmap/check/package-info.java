/**
 * Asks gravity and motion whether the columns of a unit are what its map says. In: a stream as
 * mapped. Out: what is likely wrong, what could not be asked. Start at {@link
 * steadyturn.ingest.columnmap.check.MapCheck}. Knows nothing of files.
 */
@NullMarked
package steadyturn.ingest.columnmap.check;

import org.jspecify.annotations.NullMarked;
