/**
 * Results as tables in files. In: results. Out: derivatives beside the recordings. Start at {@link
 * Derivatives}. Computes nothing.
 */
@NullMarked
package steadyturn.cli.output.tsv;

import org.jspecify.annotations.NullMarked;
