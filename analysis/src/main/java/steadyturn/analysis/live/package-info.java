/**
 * A lesson while it is going on, without any screen. In: samples and marks as they come. Out: what
 * happened. Start at {@link steadyturn.analysis.live.StepCoach}.
 */
@NullMarked
package steadyturn.analysis.live;

import org.jspecify.annotations.NullMarked;
