/**
 * What no body does and no right strapping shows. In: units beside the swings found in them, the
 * player's facts. Out: reasons to refuse a unit, a size or the side. Start at {@link WornCheck}.
 * Knows nothing of the measures.
 */
@NullMarked
package steadyturn.analysis.limits;

import org.jspecify.annotations.NullMarked;
