/**
 * Orientation of one unit in generic movement, from accelerometer and gyroscope alone. In: samples
 * in SI and sensor axes. Out: {@link OrientationTrack}, quaternions {@code qEarthUnit} (z up,
 * heading free) with one sigma. Start at {@link OrientationRun} for recordings, at {@link
 * OrientationFilter} for live samples. Leaves displacement between rests to {@code fusion.displace}
 * and body axes to {@code fusion.wear}.
 */
@NullMarked
package steadyturn.fusion.filter;

import org.jspecify.annotations.NullMarked;
