package steadyturn.ingest.clock;

import steadyturn.ingest.sample.BodyPoint;

/**
 * One unit's clock against another's.
 *
 * @param unit whose clock it is
 * @param tiedTo against whose clock
 * @param fit brings times of the first onto the clock of the second
 */
public record ClockLink(BodyPoint unit, BodyPoint tiedTo, ClockFit fit) {}
