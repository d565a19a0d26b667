/**
 * Where a unit went between two rests: one estimate of attitude, velocity and position with its
 * covariance, gaps and all. In: one unit's samples and its rests. Out: {@link SwingFit}. Start at
 * {@link LessonEstimate}. Leaves adding up to {@code fusion.strapdown}, body frames and lever arms
 * to {@code fusion.wear}.
 */
@NullMarked
package steadyturn.fusion.displace;

import org.jspecify.annotations.NullMarked;
