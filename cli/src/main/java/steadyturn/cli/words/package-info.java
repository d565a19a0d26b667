/**
 * Every sentence a person reads in results, advice and pages, in one resource bundle, ready for
 * translation. In: a key and values, or a {@link steadyturn.ingest.reason.Reason} from within. Out:
 * the text in the reader's language, or in English for files and scripts. Start at {@link Words}.
 * Usage lines and error messages of commands stay beside the command.
 */
@NullMarked
package steadyturn.cli.words;

import org.jspecify.annotations.NullMarked;
