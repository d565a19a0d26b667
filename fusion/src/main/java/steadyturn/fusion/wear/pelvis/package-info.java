/**
 * How the pelvis unit is worn: where the hip centres lie from it, what a bow and a turn on the spot
 * tell. In: samples of the wear steps. Out: lever arms and aim. Start at {@link PelvisGeometry}.
 */
@NullMarked
package steadyturn.fusion.wear.pelvis;

import org.jspecify.annotations.NullMarked;
