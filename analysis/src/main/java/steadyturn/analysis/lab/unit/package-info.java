/**
 * What an inertial unit makes of a true motion: its noise, bias, scale, misalignment, clock, full
 * scale and lost samples. In: a {@link UnitPath} and sizes of error. Out: a {@link
 * steadyturn.ingest.sample.UnitStream}. Start at {@link InertialUnit}. Knows nothing of bodies.
 */
@NullMarked
package steadyturn.analysis.lab.unit;

import org.jspecify.annotations.NullMarked;
