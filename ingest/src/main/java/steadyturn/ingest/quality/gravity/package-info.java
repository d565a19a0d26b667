/**
 * How gravity turns in a unit, by its accelerometer and by its gyroscope. In: one unit's stream.
 * Out: how far any reading of the gyroscope misses, and its scale. Start at {@link GravityTurns}.
 * Leaves to others: what a miss means.
 */
@NullMarked
package steadyturn.ingest.quality.gravity;

import org.jspecify.annotations.NullMarked;
