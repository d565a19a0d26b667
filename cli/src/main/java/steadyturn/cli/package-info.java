/**
 * Where people meet the results. In: the words typed after {@code ./steadyturn}. Out: an exit code
 * (0 done, 1 failed, 2 wrong usage), results on standard output, progress and warnings on standard
 * error. Start at {@link Main}. What each command does is in {@code cli.command}, how results look
 * in {@code cli.output}, in which words in {@code cli.words}.
 */
@NullMarked
package steadyturn.cli;

import org.jspecify.annotations.NullMarked;
