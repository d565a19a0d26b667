/**
 * Rows as files that other programs open at once. In: rows of {@link
 * steadyturn.analysis.rows.RowTable}s. Out: CSV files with a data dictionary. Start at {@link
 * CsvTables}. Computes nothing.
 */
@NullMarked
package steadyturn.cli.output.rows;

import org.jspecify.annotations.NullMarked;
