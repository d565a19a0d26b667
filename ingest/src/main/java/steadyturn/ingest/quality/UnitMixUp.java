package steadyturn.ingest.quality;

import java.util.List;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Notices units that changed places. The trunk turns slower than the arm, the forearm slower than
 * the hand, the hand slower than the club. In the open whole-body recording of Yang (qmt, everyday
 * movement) the hand turns 2.4 to 6 times as fast as hip and back, and 1.1 to 1.2 times as fast as
 * the forearm; the rates of forearm and hand correlate by 0.96, those of hip and hand by 0.5. In
 * walking the hip's accelerations come near the hand's, so there the rates decide. A claim is made
 * only where several movements agree.
 */
final class UnitMixUp {

  private static final int FEWEST_BLOCKS = 4;

  /** An arm is pulled so in a swing, a trunk never: docs/mistakes.md, "units exchanged". */
  private static final double PULL_OF_ARM_MPS2 = 25;

  private UnitMixUp() {}

  /** What the comparison with the other unit says of the first. */
  static List<Finding> ofFirst(Activity unit, Activity other) {
    int order = Integer.compare(reach(unit.point()), reach(other.point()));
    if (order == 0) {
      return List.of();
    }
    Activity inner = order < 0 ? unit : other;
    Activity outer = order < 0 ? other : unit;
    Briskness compared = Briskness.of(inner, outer);
    if (compared.blocks() < FEWEST_BLOCKS) {
      return List.of();
    }
    boolean isArm = inner.point().isTrunk() && isPulledAsAnArm(outer, inner);
    if (!isArm && isSwapped(inner.point(), outer.point(), compared)) {
      return notUsable(QualityReason.SWAPPED, inner.point(), compared.gyroRatio(), outer.point());
    }
    boolean together = inner.point().isTrunk() && isOneWithTheArm(outer.point(), compared);
    return together && inner == unit
        ? notUsable(QualityReason.ON_THE_ARM, inner.point(), outer.point())
        : List.of();
  }

  /** What was once swung as no trunk is, and more than the trunk was, is no trunk. */
  private static boolean isPulledAsAnArm(Activity arm, Activity trunk) {
    return arm.wildestMps2() > Math.max(PULL_OF_ARM_MPS2, trunk.wildestMps2());
  }

  private static boolean isSwapped(BodyPoint inner, BodyPoint outer, Briskness compared) {
    if (inner.isTrunk()) {
      boolean isClear = compared.gyroRatio() > 1.4 && compared.accelRatio() > 1.2;
      boolean turnsFarMore = compared.gyroRatio() > 1.8 && compared.accelRatio() > 0.6;
      return compared.gyroShare() > 0.75 && (isClear || turnsFarMore);
    }
    double least = outer == BodyPoint.CLUB_SHAFT ? 1.2 : 1.06;
    return compared.blocks() >= 6
        && compared.gyroRatio() > least
        && compared.gyroShare() > 0.85
        && compared.accelRatio() > 1.1;
  }

  /** A trunk unit that moves as one with the arm, to a degree no trunk does. */
  private static boolean isOneWithTheArm(BodyPoint outer, Briskness compared) {
    return outer != BodyPoint.CLUB_SHAFT
        && compared.correlation() > 0.93
        && compared.gyroRatio() > 0.75
        && compared.accelRatio() > 0.6;
  }

  private static List<Finding> notUsable(QualityReason code, Object... figures) {
    return List.of(Finding.of(Verdict.NOT_USABLE, code, figures));
  }

  /** Grows from the trunk to the club. */
  private static int reach(BodyPoint point) {
    return switch (point) {
      case PELVIS, THORAX -> 0;
      case LEAD_FOREARM -> 1;
      case LEAD_HAND -> 2;
      case CLUB_SHAFT -> 3;
    };
  }
}
