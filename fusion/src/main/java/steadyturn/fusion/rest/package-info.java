/**
 * When a worn unit is at rest, and how still a swaying person holds it. In: one unit's samples and
 * the time to look around. Out: {@link Rest}. Start at {@link RestGate}. Judges stillness only: an
 * accelerometer cannot tell rest from constant speed, so that is left to {@code fusion.displace},
 * which compares the two ends of a swing.
 */
@NullMarked
package steadyturn.fusion.rest;

import org.jspecify.annotations.NullMarked;
