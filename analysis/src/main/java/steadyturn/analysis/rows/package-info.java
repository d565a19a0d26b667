/**
 * Results as rows of tables for statistics: one row a value, numbers and words only. In: a lesson
 * or a path. Out: the rows of the tables of {@link RowTable}, handed to a {@link RowSink}. Start at
 * {@link PathRows}. Knows no file format and no sentence.
 */
@NullMarked
package steadyturn.analysis.rows;

import org.jspecify.annotations.NullMarked;
