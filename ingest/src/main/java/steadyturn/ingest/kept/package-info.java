/**
 * Answers that were reckoned from an archive's files once and are kept beside them. In: the files
 * an answer rests on, and its bytes. Out: the bytes, for as long as nothing they rest on has
 * changed. Start at {@link KeptAnswer}. Knows nothing of what the bytes say.
 */
@NullMarked
package steadyturn.ingest.kept;

import org.jspecify.annotations.NullMarked;
