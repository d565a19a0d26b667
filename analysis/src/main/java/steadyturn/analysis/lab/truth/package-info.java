/**
 * What truly happened in a simulated lesson. In: exact motion. Out: true events and measures. Start
 * at {@link LessonTruth}. Estimates nothing.
 */
@NullMarked
package steadyturn.analysis.lab.truth;

import org.jspecify.annotations.NullMarked;
