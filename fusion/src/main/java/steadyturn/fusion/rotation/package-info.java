/**
 * The only room with quaternion algebra. In: numbers. Out: {@link Quaternion}, {@link Vector3}.
 * Start at {@link Quaternion}. Scalar first, unit, right-handed; {@code qGroundPelvis} turns pelvis
 * coordinates into ground coordinates, so in a product neighbours must match: {@code
 * qGroundUnit.times(qUnitPelvis)}.
 */
@NullMarked
package steadyturn.fusion.rotation;

import org.jspecify.annotations.NullMarked;
