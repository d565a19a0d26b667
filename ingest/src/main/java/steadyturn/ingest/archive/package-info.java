/**
 * The archive as a whole: who is in it, with which lessons; one player forgotten, renamed, joined
 * with another, handed over; sums that show what changed. In: an archive's folder. Out: lists and
 * reports. Start at {@link PlayerBook}. Works on files and names; reads no samples.
 */
@NullMarked
package steadyturn.ingest.archive;

import org.jspecify.annotations.NullMarked;
