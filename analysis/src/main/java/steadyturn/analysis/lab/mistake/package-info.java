/**
 * What people do wrong when they strap, set up, import or describe units, and how often the
 * analysis calls it by its name. In: sound simulated lessons. Out: {@link MistakeRow}s. Start at
 * {@link MistakeStudy}. Knows nothing of how a mistake is noticed.
 */
@NullMarked
package steadyturn.analysis.lab.mistake;

import org.jspecify.annotations.NullMarked;
