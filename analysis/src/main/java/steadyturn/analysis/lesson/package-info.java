/**
 * One lesson from recordings to results: puts the rooms of analysis together in their order. In:
 * the recordings of one session. Out: {@link LessonResult}. Start at {@link LessonResult}. Leaves
 * printing and files to others.
 */
@NullMarked
package steadyturn.analysis.lesson;

import org.jspecify.annotations.NullMarked;
