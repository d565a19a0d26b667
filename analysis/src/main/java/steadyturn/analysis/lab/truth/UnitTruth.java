package steadyturn.analysis.lab.truth;

import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.ingest.sample.BodyPoint;

/**
 * What is true of one simulated unit.
 *
 * @param qSegmentUnit true mounting of the unit on its segment, as the player really wears it
 * @param errors sensor errors, in the axes of the right-handed original; for a left-handed player
 *     the mirror changes the sign of everything along y (acceleration) and x, z (rate)
 * @param clock the unit's clock against true time
 */
public record UnitTruth(
    BodyPoint point, Quaternion qSegmentUnit, UnitErrors errors, UnitClock clock) {}
