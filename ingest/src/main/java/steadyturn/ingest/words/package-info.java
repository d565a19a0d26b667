/**
 * Every sentence a person reads in results, advice and pages, in one resource bundle, ready for
 * translation. In: a key and values. Out: the text. Start at {@link Words}. Usage lines and error
 * messages of commands stay beside the command; knows nothing of sensors or golf.
 */
@NullMarked
package steadyturn.ingest.words;

import org.jspecify.annotations.NullMarked;
