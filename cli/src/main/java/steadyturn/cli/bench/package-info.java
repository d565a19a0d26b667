/**
 * How much of the machine a piece of work takes. In: the work. Out: a {@link Cost} with the share
 * of each room, and the {@link Yardstick} to hold it against. Start at {@link Cost}. Knows nothing
 * of lessons.
 */
@NullMarked
package steadyturn.cli.bench;

import org.jspecify.annotations.NullMarked;
