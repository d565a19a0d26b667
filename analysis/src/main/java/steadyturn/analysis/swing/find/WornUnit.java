package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * An arm unit with its rest bias and the direction of the bone in its axes, towards the fingers.
 */
record WornUnit(UnitStream stream, Vector3 biasRadPerS, Vector3 longAxisUnit) {

  /** The motion around a sample; empty when it is no stroke. */
  Optional<ArmMotion> around(int peak, FinderSettings settings) {
    return ArmMotion.around(stream, peak, biasRadPerS, longAxisUnit, settings.longestBackS());
  }

  /** The motion around an instant; empty when it is no stroke. */
  Optional<ArmMotion> around(double timeS, FinderSettings settings) {
    int index = stream.indexAt(timeS);
    return index >= stream.size() || index < 10 ? Optional.empty() : around(index, settings);
  }
}
