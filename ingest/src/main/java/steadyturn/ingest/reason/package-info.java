/**
 * Why something is withheld, uncertain or to be done again. In: a code of a closed set, numbers and
 * body points. Out: a {@link Reason}, the same in every language. Start at {@link Reason#of}.
 * Sentences, decimals, plurals and the reader's language belong to the command line.
 */
@NullMarked
package steadyturn.ingest.reason;

import org.jspecify.annotations.NullMarked;
