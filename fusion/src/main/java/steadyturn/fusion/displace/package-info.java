/**
 * Where a unit went between two rests: one estimate of attitude, velocity and position with its
 * covariance. In: one unit's samples and its rests. Out: {@link UnitMotion}. Start at {@link
 * UnitMotion}. Leaves body frames and lever arms to {@code fusion.wear}.
 */
@NullMarked
package steadyturn.fusion.displace;

import org.jspecify.annotations.NullMarked;
