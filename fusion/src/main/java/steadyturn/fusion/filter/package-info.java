/**
 * Orientation of one unit in generic movement, from accelerometer and gyroscope alone, sample by
 * sample. In: samples in SI and sensor axes. Out: quaternions {@code qEarthUnit} (z up, heading
 * free) with one sigma. Start at {@link OrientationFilter}; two of its filters have rooms of their
 * own, whole recordings are {@code fusion.orientation}'s. Leaves displacement between rests to
 * {@code fusion.displace} and body axes to {@code fusion.wear}.
 */
@NullMarked
package steadyturn.fusion.filter;

import org.jspecify.annotations.NullMarked;
