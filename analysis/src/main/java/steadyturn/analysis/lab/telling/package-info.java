/**
 * Whether what is told keeps its promises. In: a number of comparisons and a seed. Out: how often
 * each promise was kept, and lessons of players of whom it is known what should be told first.
 * Start at {@link ComparisonStudy}, {@link KnownFault}. Leaves pages and tables to others.
 */
@NullMarked
package steadyturn.analysis.lab.telling;

import org.jspecify.annotations.NullMarked;
