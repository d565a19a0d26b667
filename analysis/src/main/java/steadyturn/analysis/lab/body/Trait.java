package steadyturn.analysis.lab.body;

/**
 * What distinguishes one swing from another. Pelvis values are changes since address with the signs
 * of the measures; the usual spreads are our assumptions (docs/simulator.md).
 */
@SuppressWarnings("ImmutableEnumChecker") // Variation is a record of numbers
public enum Trait {
  TURN_TOP_DEG(new Variation(-45, 12, 3, -67, -25)),
  TURN_IMPACT_DEG(new Variation(40, 12, 3, 18, 62)),
  TURN_FINISH_DEG(Variation.about(95, 4, 2)),
  SLIDE_TOP_MM(Variation.evenly(-70, 30, 12)),
  SLIDE_IMPACT_MM(Variation.evenly(50, 130, 12)),
  /** From impact on. */
  SLIDE_THROUGH_MM(Variation.about(25, 8, 6)),
  THRUST_TOP_MM(Variation.about(5, 10, 5)),
  THRUST_IMPACT_MM(Variation.about(15, 14, 6)),
  THRUST_FINISH_MM(Variation.about(40, 14, 8)),
  LIFT_TOP_MM(Variation.about(-10, 8, 4)),
  LIFT_IMPACT_MM(Variation.about(20, 10, 5)),
  LIFT_FINISH_MM(Variation.about(50, 10, 6)),
  TILT_TOP_DEG(Variation.about(-1, 3, 1.5)),
  TILT_IMPACT_DEG(Variation.about(-9, 4, 2)),
  TILT_FINISH_DEG(Variation.about(-20, 4, 2)),
  SIDE_TILT_TOP_DEG(Variation.about(-6, 3, 1.5)),
  SIDE_TILT_IMPACT_DEG(Variation.about(9, 3, 1.5)),
  SIDE_TILT_FINISH_DEG(Variation.about(2, 3, 1.5)),
  TRUNK_TOP_DEG(Variation.about(-42, 5, 2)),
  TRUNK_IMPACT_DEG(Variation.about(-18, 5, 2)),
  TRUNK_FINISH_DEG(Variation.about(15, 5, 3)),
  ARM_ADDRESS_DEG(Variation.about(2, 1.5, 0.7)),
  ARM_TOP_DEG(Variation.about(-148, 8, 3)),
  ARM_IMPACT_DEG(Variation.about(6, 2, 1)),
  ARM_FINISH_DEG(Variation.about(150, 7, 4)),
  /** Lean of the arm's plane to the ball; with the cock it lays the shaft 60 deg below level. */
  PLANE_ADDRESS_DEG(Variation.about(-16, 2, 0.7)),
  PLANE_TOP_DEG(Variation.about(-33, 3, 1)),
  PLANE_IMPACT_DEG(Variation.about(-21, 2, 1)),
  PLANE_FINISH_DEG(Variation.about(-35, 3, 1.5)),
  ROLL_TOP_DEG(Variation.about(90, 6, 2)),
  ROLL_IMPACT_DEG(Variation.about(14, 4, 2)),
  ROLL_FINISH_DEG(Variation.about(-75, 8, 4)),
  FLEXION_ADDRESS_DEG(Variation.about(-8, 4, 1)),
  FLEXION_TOP_DEG(Variation.about(2, 6, 2)),
  FLEXION_IMPACT_DEG(Variation.about(-3, 3, 1.5)),
  COCK_ADDRESS_DEG(Variation.about(15, 4, 1)),
  COCK_TOP_DEG(Variation.about(85, 6, 2)),
  COCK_IMPACT_DEG(Variation.about(8, 4, 2)),
  COCK_FINISH_DEG(Variation.about(60, 8, 4)),
  /** Start of the release before impact. */
  RELEASE_START_MS(Variation.about(140, 12, 5)),
  /** From the start of the release to the end of the uncocking. */
  RELEASE_LENGTH_MS(Variation.about(185, 10, 5)),
  BACK_S(Variation.about(0.85, 0.08, 0.025)),
  DOWN_S(Variation.about(0.27, 0.02, 0.008)),
  /** By how much the pelvis turns round before the hands. */
  PELVIS_LEAD_S(Variation.about(0.07, 0.015, 0.008));

  private final Variation usual;

  Trait(Variation usual) {
    this.usual = usual;
  }

  /** The spread over the players of the mixed style. */
  public Variation usual() {
    return usual;
  }
}
