/**
 * Blows in a unit's own samples. In: one stream. Out: {@link Shock}s, and how late a blow reaches a
 * body point. Start at {@link ShockFinder}. Leaves clocks and swings to others.
 */
@NullMarked
package steadyturn.ingest.shock;

import org.jspecify.annotations.NullMarked;
