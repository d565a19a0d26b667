/**
 * What a column map says of a table: where rows, times and quantities stand in it, in which unit,
 * with which sign. In: nothing. Out: records. Start at {@link
 * steadyturn.ingest.columnmap.layout.MapPart}. Leaves reading a map and a table by it to the room
 * above.
 */
@NullMarked
package steadyturn.ingest.columnmap.layout;

import org.jspecify.annotations.NullMarked;
