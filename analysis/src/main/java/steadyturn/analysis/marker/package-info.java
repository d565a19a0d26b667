/**
 * Our pelvis against that of an optical laboratory. In: a lesson's result and paths of markers on
 * the pelvis. Out: bias, limits of agreement and coverage, measure by measure. Start at {@link
 * MarkerAgreement}.
 */
@NullMarked
package steadyturn.analysis.marker;

import org.jspecify.annotations.NullMarked;
