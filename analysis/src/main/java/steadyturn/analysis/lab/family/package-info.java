/**
 * Families of movement and of error, drawn at random: what bodies, straps, units and blows do that
 * no one who analyses them has agreed to. In: random numbers. Out: a {@link SwingTiming} of a
 * player and the {@link WornBody} that carries the units. Start at {@link Family}. One half of the
 * families is for tuning, the other for judging.
 */
@NullMarked
package steadyturn.analysis.lab.family;

import org.jspecify.annotations.NullMarked;
