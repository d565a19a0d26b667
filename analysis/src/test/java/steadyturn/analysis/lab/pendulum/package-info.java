/**
 * A swing as a driven double pendulum: arm and club in one plane about a fixed hub. In: masses,
 * torques, release angle. Out: angles, rates and accelerations over time with the energy that does
 * not add up. Start at {@link DoublePendulum}. Knows neither units nor lessons.
 */
@NullMarked
package steadyturn.analysis.lab.pendulum;

import org.jspecify.annotations.NullMarked;
