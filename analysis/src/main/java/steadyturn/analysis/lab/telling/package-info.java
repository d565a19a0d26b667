/**
 * Whether what is told of a comparison keeps its promises. In: a number of comparisons and a seed.
 * Out: how often each promise was kept. Start at {@link ComparisonStudy}. Makes values, not motion;
 * leaves the tables to others.
 */
@NullMarked
package steadyturn.analysis.lab.telling;

import org.jspecify.annotations.NullMarked;
