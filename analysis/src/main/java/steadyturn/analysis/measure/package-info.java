/**
 * The words of the result: which measures there are, and a value with its interval, its grade and,
 * when withheld, the reason. In: numbers from the rooms that compute. Out: {@link MeasureValue}.
 * Start at {@link Measure}. Knows neither units nor swings.
 */
@NullMarked
package steadyturn.analysis.measure;

import org.jspecify.annotations.NullMarked;
