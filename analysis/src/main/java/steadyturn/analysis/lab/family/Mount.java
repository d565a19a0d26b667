package steadyturn.analysis.lab.family;

import steadyturn.analysis.lab.body.SkinSpring;
import steadyturn.fusion.rotation.Vector3;

/**
 * How a unit really sits on its segment.
 *
 * @param leanRad turn from the nominal mounting, in unit axes
 * @param creepRad how far it has turned by the end of the lesson, in segment axes
 * @param creepM how far it has moved by then
 * @param skin what it sits on
 */
public record Mount(Vector3 leanRad, Vector3 creepRad, Vector3 creepM, SkinSpring skin) {}
