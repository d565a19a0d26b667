/**
 * Text tables, in and out: bytes become lines, lines become numbers, and every error carries its
 * place. In: a file. Out: columns of samples. Start at {@link MotionStream}. Knows nothing of
 * folders and lessons.
 */
@NullMarked
package steadyturn.ingest.recording.table;

import org.jspecify.annotations.NullMarked;
