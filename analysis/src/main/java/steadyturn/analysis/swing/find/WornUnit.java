package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * An arm unit and what is known of it.
 *
 * @param biasRadPerS what its gyroscope shows at rest, unit axes
 * @param longAxisUnit direction of the bone in its axes, towards the fingers
 * @param longAxisSdRad how far the bone may lie from there (1 SD)
 */
record WornUnit(
    UnitStream stream, Vector3 biasRadPerS, Vector3 longAxisUnit, double longAxisSdRad) {

  // our choices: what the median over the stillnesses of a swaying player leaves of a bias, and
  // what a unit of today may have where no stillness was found
  private static final double KNOWN_RAD_PER_S = Math.toRadians(0.2);
  private static final double UNKNOWN_RAD_PER_S = Math.toRadians(1.5);

  /** How well its bias is known, rad/s (1 SD). */
  double biasSdRadPerS() {
    return biasRadPerS.equals(Vector3.ZERO) ? UNKNOWN_RAD_PER_S : KNOWN_RAD_PER_S;
  }

  /** The motion around an instant; empty when it is no stroke. */
  Optional<ArmMotion> around(double timeS) {
    return ArmMotion.around(this, timeS);
  }
}
