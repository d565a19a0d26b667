/**
 * Runs a filter, or its smoother, over a whole stream. In: a unit's samples and an {@link
 * OrientationMethod}. Out: an {@link OrientationTrack}. Start at {@link OrientationRun}. Leaves the
 * filters themselves to {@code fusion.filter}.
 */
@NullMarked
package steadyturn.fusion.orientation;

import org.jspecify.annotations.NullMarked;
