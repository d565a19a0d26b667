/**
 * How well the measures do against the simulator's exact truth: studies that {@code steadyturn
 * accuracy} runs and that docs/accuracy.md quotes. In: a number of lessons and a seed. Out: {@link
 * StudyRow}s. Start at a study such as {@link SwingStudy}. Knows nothing of printing.
 */
@NullMarked
package steadyturn.analysis.lab.study;

import org.jspecify.annotations.NullMarked;
