package steadyturn.analysis.lab.body;

/**
 * What moves in the simulated player, rad or m. Ground x to the target, y left of it, z up; a
 * right-handed player at address faces -y.
 */
public enum Joint {
  /** Place of mid-hip along x, y, z of the ground, m. */
  PLACE_X,
  PLACE_Y,
  PLACE_Z,
  /** The whole player (pelvis, trunk, arms) about the vertical; 0 in the stance. */
  HEADING,
  /** Pelvis about the vertical, positive opening to the target; 0 is square to the target line. */
  TURN,
  /** Lead hip up. */
  SIDE_TILT,
  /** Pelvis forward about the hip line, from level in the anatomical pelvis axes. */
  TILT,
  /** Chest against pelvis about the spine, positive to the target. */
  TRUNK_TURN,
  /** Chest against pelvis, forward. */
  TRUNK_BEND,
  /** Tilt of the plane in which the lead arm swings; 0 is vertical, negative leans to the ball. */
  PLANE,
  /** Lead arm in its plane: 0 hanging, negative on the trail side, positive on the lead side. */
  ARM,
  /** Forearm about its length; +90 deg: the thumb side points away from the target. */
  ROLL,
  /** Wrist towards the palm. */
  FLEXION,
  /** Wrist towards the thumb. */
  COCK,
  /** Hand about the forearm's length, beside what the two axes of the wrist allow. */
  PLAY,
  /** Club bent towards the thumb side, at the shaft unit. */
  CLUB_BEND
}
