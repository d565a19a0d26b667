/**
 * A lesson while it is going on, without any screen. In: samples and marks as they come. Out: what
 * happened, as {@link steadyturn.analysis.live.LiveEvents} tells it. Start at {@link
 * steadyturn.analysis.live.LiveLesson}; wear steps while they are done: {@link
 * steadyturn.analysis.live.StepCoach}.
 */
@NullMarked
package steadyturn.analysis.live;

import org.jspecify.annotations.NullMarked;
