/**
 * What the pelvis did: turn, slide and the rest of its pose at every sample, the point it turned
 * about, and the measures at the key positions with their intervals. In: the pelvis unit's motion
 * and how it sits. Out: {@link PelvisTrack}, then {@link PelvisMeasures}. Start at {@link
 * PelvisTrack}. Degrees and millimetres begin here, in {@link PelvisMeasures}; knows nothing of
 * wrists, files or advice.
 */
@NullMarked
package steadyturn.analysis.pelvis;

import org.jspecify.annotations.NullMarked;
