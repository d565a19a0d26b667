/**
 * How the units of forearm and hand are worn, and the joint between them. In: samples of the wear
 * steps and of a swing. Out: axes of the joint, its angles and rates. Start at {@link WristSteps}.
 */
@NullMarked
package steadyturn.fusion.wear.wrist;

import org.jspecify.annotations.NullMarked;
