/**
 * The result of a lesson as bytes and back, to the last bit. In: a {@link KeptLesson}. Out: bytes,
 * or the same lesson again. Start at {@link KeptLesson}. Knows nothing of files.
 */
@NullMarked
package steadyturn.analysis.kept;

import org.jspecify.annotations.NullMarked;
