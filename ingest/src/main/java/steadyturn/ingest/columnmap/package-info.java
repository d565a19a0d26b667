/**
 * Tables of other programs, made readable by a column map: a small file that tells which column is
 * what, in which unit, with which sign. In: a table and a {@link
 * steadyturn.ingest.columnmap.ColumnMap}. Out: unit streams that gravity and motion have been asked
 * about, so that a wrong map does not pass. Start at {@link
 * steadyturn.ingest.columnmap.ColumnMapImporter}. Leaves to others: writing the archive (recording)
 * and judging the unit itself (quality).
 */
@NullMarked
package steadyturn.ingest.columnmap;

import org.jspecify.annotations.NullMarked;
