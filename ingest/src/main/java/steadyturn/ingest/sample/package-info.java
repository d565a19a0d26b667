/**
 * The honest streams everything else starts from: one unit's samples as columns, and a recording of
 * several units with the player and the notes taken while it ran. In: nothing. Out: {@link
 * UnitStream}, {@link Recording}. Start at {@link Recording}. SI units, sensor axes, one common
 * time axis in seconds. Knows nothing of files, ports or maths.
 */
@NullMarked
package steadyturn.ingest.sample;

import org.jspecify.annotations.NullMarked;
