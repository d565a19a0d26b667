/**
 * How the units sit on the body. In: what the units felt during the wear steps. Out: the turn from
 * each unit to its segment, such as {@link WristAlignment}. Start at {@link WristAlignment} for the
 * arm. Leaves movement during swings to {@code fusion.displace}.
 */
@NullMarked
package steadyturn.fusion.wear;

import org.jspecify.annotations.NullMarked;
