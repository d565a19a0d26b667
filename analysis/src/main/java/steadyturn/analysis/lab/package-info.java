/**
 * Lessons that never happened, with exact truth beside the streams: for demonstration, for studies
 * of accuracy, for tests. In: a {@link LessonSpec} and a seed. Out: a {@link SyntheticLesson}.
 * Start at {@link LessonSimulator}. Writes no files and estimates nothing. Sizes of errors and
 * their sources are in docs/simulator.md.
 */
@NullMarked
package steadyturn.analysis.lab;

import org.jspecify.annotations.NullMarked;
