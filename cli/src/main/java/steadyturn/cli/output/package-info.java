/**
 * How results look. In: {@link steadyturn.analysis.lesson.LessonResult}s. Out: text for people,
 * JSON and TSV for scripts, files for an archive. Start at {@link
 * steadyturn.cli.output.table.TableReport}. Adds no number of its own beyond the mean of a club; a
 * value never appears without its interval, a withheld one never without its reason.
 */
@NullMarked
package steadyturn.cli.output;

import org.jspecify.annotations.NullMarked;
