/**
 * What the commands about lessons share: paths, reading, choices. In: arguments. Out: recordings
 * and options. Start at {@link Lessons}. Prints nothing.
 */
@NullMarked
package steadyturn.cli.lesson;

import org.jspecify.annotations.NullMarked;
