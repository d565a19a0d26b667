/**
 * A filter that low-passes the specific force in an almost inertial frame. In: samples of one unit.
 * Out: orientation and gyroscope bias. Start at {@link LowPassFilter}.
 */
@NullMarked
package steadyturn.fusion.filter.lowpass;

import org.jspecify.annotations.NullMarked;
