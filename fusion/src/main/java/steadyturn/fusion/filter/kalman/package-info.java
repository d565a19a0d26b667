/**
 * An error-state Kalman filter in blocks of samples. In: samples of one unit. Out: orientation,
 * gyroscope bias and their covariance; a pass backward. Start at {@link ErrorStateKalmanFilter}.
 */
@NullMarked
package steadyturn.fusion.filter.kalman;

import org.jspecify.annotations.NullMarked;
