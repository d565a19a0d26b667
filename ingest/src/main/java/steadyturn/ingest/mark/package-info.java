/**
 * What a person notes while a lesson runs. In: marks as typed or as rows of an events file. Out:
 * the same as stretches of time, in words that are known. Start at {@link
 * steadyturn.ingest.mark.MarkWord}. Leaves to others: which swing a note belongs to, and how a step
 * went.
 */
@NullMarked
package steadyturn.ingest.mark;

import org.jspecify.annotations.NullMarked;
