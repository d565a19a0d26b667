/**
 * From samples to attitude, velocity and place by adding up. In: one unit's samples and the {@link
 * steadyturn.fusion.strapdown.UnitState} they are seen with. Out: {@link
 * steadyturn.fusion.strapdown.UnitMotion}, and what each gap may have cost. Start at {@link
 * steadyturn.fusion.strapdown.Strapdown}. Leaves finding the state to {@code fusion.displace}.
 */
@NullMarked
package steadyturn.fusion.strapdown;

import org.jspecify.annotations.NullMarked;
