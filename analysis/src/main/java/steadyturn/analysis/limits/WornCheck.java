package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import steadyturn.analysis.swing.Swing;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Holds how the units say they are worn against gravity, the pull of the swing and the side the
 * player swings from. The bounds lie half way between what right and wrong strapping shows; the
 * figures behind them are in docs/mistakes.md.
 *
 * @param units why a unit cannot be worn as it says
 * @param side why the side cannot be the one given
 */
public record WornCheck(Map<BodyPoint, Reason> units, Optional<Reason> side) {

  /**
   * A stroke so long before a swing that was found is that swing, so soon after its way back, s.
   */
  private static final double SAME_S = 1.5;

  private static final double BACK_S = 5;

  /** Cosine between up and the unit's axis: a belt worn high and a bent stance lean by 55 deg. */
  private static final double LEAST_UP = 0.35;

  /** A hanging arm points down; how far the back of hand and forearm look up is less sure. */
  private static final double LEAST_DOWN = 0;

  private static final double LEAST_TURNED = 0.1;

  /**
   * A pelvis bends forward at address, so its back looks up a little: by a cosine of 0.3 to 0.8.
   */
  private static final double FACING_IN_UP = -0.1;

  /** It bends over the hip line, to the side by 12 deg at most and by a cosine of 0.1. */
  private static final double ROUND_RAD = Math.toRadians(22);

  private static final double ROUND_UP = 0.2;

  /** Trunk and arm turn to the target by 35 to 120 deg in the downswing, all of them. */
  private static final double CLEAR_TURN_RAD = Math.toRadians(8);

  /**
   * Arms are pulled by 31 to 160 m/s^2 before impact, trunks by less than 17. In a minute of
   * everyday movement of a real wearer (Yang, qmt) the hands by up to 20.5, hip and back by 8.6.
   */
  private static final double PULL_OF_ARM_MPS2 = 25;

  /** Half way, as a ratio, from 1 to what is least in sound lessons. */
  private static final double ON_ONE_BONE = 1.18;

  /** As a ratio; our choice: in sound lessons the hand is faster by a tenth at least. */
  private static final double ALIKE_FAST = 1.1;

  public WornCheck {
    units = Map.copyOf(units);
  }

  /** Looks at some swings of a recording; nothing is said where there is none. */
  public static WornCheck of(Recording recording, List<Swing> swings) {
    List<Stroke> found = Stroke.of(swings);
    List<Map<BodyPoint, StrokeSeen>> seen =
        (found.isEmpty() ? Stroke.fast(recording) : found)
            .parallelStream()
                .map(stroke -> seen(recording, stroke))
                .filter(
                    its -> !found.isEmpty() || its.values().stream().anyMatch(WornCheck::isWild))
                .toList();
    Map<BodyPoint, List<StrokeSeen>> byPoint = new EnumMap<>(BodyPoint.class);
    seen.forEach(
        its ->
            its.forEach(
                (point, one) -> byPoint.computeIfAbsent(point, p -> new ArrayList<>()).add(one)));
    return judge(byPoint, recording.player().handed());
  }

  /** The first stroke of the other side, which no swing is found in; none where there is none. */
  public static Optional<Reason> otherSide(Recording recording, List<Swing> swings) {
    List<Stroke> found = Stroke.all(swings);
    int sign = recording.player().handed().sign();
    return Stroke.fast(recording).stream()
        .filter(s -> found.stream().noneMatch(f -> isOf(f, s)))
        .filter(s -> isOtherSide(seen(recording, s), sign))
        .findFirst()
        .map(s -> Reason.of(BodyReason.OTHER_SIDE, Math.rint(s.impactS())));
  }

  private static boolean isOf(Stroke found, Stroke other) {
    double laterS = other.impactS() - found.impactS();
    return laterS > -SAME_S && laterS < BACK_S;
  }

  private static boolean isOtherSide(Map<BodyPoint, StrokeSeen> seen, int sign) {
    return seen.size() > 1
        && seen.values().stream().allMatch(its -> turnsAgainst(List.of(its), sign));
  }

  private static Map<BodyPoint, StrokeSeen> seen(Recording recording, Stroke stroke) {
    Map<BodyPoint, StrokeSeen> out = new EnumMap<>(BodyPoint.class);
    for (UnitStream unit : recording.units()) {
      StrokeSeen.of(unit, stroke).ifPresent(its -> out.put(unit.point(), its));
    }
    return out;
  }

  /** Pulled as an arm in a swing; in everyday movement no unit is. */
  private static boolean isWild(StrokeSeen seen) {
    return seen.pull().norm() > PULL_OF_ARM_MPS2;
  }

  private static WornCheck judge(Map<BodyPoint, List<StrokeSeen>> seen, Handedness handed) {
    Map<BodyPoint, Reason> units = new LinkedHashMap<>(exchanged(seen));
    boolean isOtherSide = isOtherSide(seen, handed);
    int sign = isOtherSide ? -handed.sign() : handed.sign();
    seen.forEach(
        (point, its) -> {
          if (!units.containsKey(point)) {
            mount(point, its, sign).ifPresent(why -> units.put(point, why));
          }
        });
    return new WornCheck(
        units,
        isOtherSide ? Optional.of(Reason.of(BodyReason.SIDE, handed.word())) : Optional.empty());
  }

  /** All units turn clearly the other way. */
  private static boolean isOtherSide(Map<BodyPoint, List<StrokeSeen>> seen, Handedness handed) {
    return !seen.isEmpty()
        && seen.values().stream().allMatch(its -> turnsAgainst(its, handed.sign()));
  }

  private static boolean turnsAgainst(List<StrokeSeen> its, int sign) {
    return sign * middle(its, StrokeSeen::turnDownRad) < -CLEAR_TURN_RAD;
  }

  private static Optional<Reason> mount(BodyPoint point, List<StrokeSeen> its, int sign) {
    Optional<Reason> worn =
        switch (point) {
          case PELVIS, THORAX -> trunk(point, its);
          case LEAD_FOREARM, LEAD_HAND -> arm(point, its, sign);
          case CLUB_SHAFT -> Optional.empty();
        };
    // an arm's roll may outweigh its turn about the vertical, as in a slow swing that cameras saw
    return worn.isPresent() || !point.isTrunk() || !turnsAgainst(its, sign)
        ? worn
        : Optional.of(Reason.of(MountReason.TURNS_AGAINST, point));
  }

  private static Optional<Reason> trunk(BodyPoint point, List<StrokeSeen> its) {
    double up = middle(its, u -> u.up().x());
    if (up < -LEAST_UP) {
      return Optional.of(Reason.of(MountReason.UPSIDE_DOWN, point));
    }
    if (up < LEAST_UP) {
      return Optional.of(Reason.of(MountReason.ON_ITS_SIDE, point, Math.toDegrees(Math.acos(up))));
    }
    if (point != BodyPoint.PELVIS) {
      return Optional.empty();
    }
    double back = middle(its, u -> u.up().z());
    if (back < FACING_IN_UP) {
      return Optional.of(Reason.of(MountReason.FACING_IN, point));
    }
    double side = middle(its, u -> u.up().y());
    double round = Math.abs(Math.atan2(side, back));
    return Math.abs(side) > ROUND_UP && round > ROUND_RAD
        ? Optional.of(Reason.of(MountReason.ROUND_THE_HIP, point, Math.toDegrees(round)))
        : Optional.empty();
  }

  /** At address the arm hangs, the back of hand and forearm look to the target and a little up. */
  private static Optional<Reason> arm(BodyPoint point, List<StrokeSeen> its, int sign) {
    boolean hangsUp = middle(its, u -> u.up().x()) > LEAST_DOWN;
    boolean isPushed = middle(its, u -> u.pull().x()) > PULL_OF_ARM_MPS2;
    if (hangsUp || isPushed) {
      return Optional.of(Reason.of(MountReason.TOWARDS_ELBOW, point));
    }
    return sign * middle(its, u -> u.up().y()) > LEAST_TURNED
        ? Optional.of(Reason.of(MountReason.FACING_IN, point))
        : Optional.empty();
  }

  /** A trunk that is pulled as an arm beside an arm that is pulled as a trunk. */
  private static Map<BodyPoint, Reason> exchanged(Map<BodyPoint, List<StrokeSeen>> seen) {
    List<BodyPoint> quietArms = new ArrayList<>();
    List<BodyPoint> wildTrunks = new ArrayList<>();
    seen.forEach(
        (point, its) -> {
          boolean isWild = middle(its, u -> u.pull().norm()) > PULL_OF_ARM_MPS2;
          if (point.isTrunk() && isWild) {
            wildTrunks.add(point);
          } else if (!point.isTrunk() && !isWild) {
            quietArms.add(point);
          }
        });
    if (!quietArms.isEmpty() && !wildTrunks.isEmpty()) {
      return pair(MountReason.EXCHANGED, wildTrunks.get(0), quietArms.get(0));
    }
    List<StrokeSeen> forearm = seen.getOrDefault(BodyPoint.LEAD_FOREARM, List.of());
    List<StrokeSeen> hand = seen.getOrDefault(BodyPoint.LEAD_HAND, List.of());
    if (forearm.isEmpty() || hand.isEmpty()) {
      return Map.of();
    }
    double out = furtherOut(forearm, hand);
    boolean isSame = out > 1 / ON_ONE_BONE && out < ON_ONE_BONE && isAlikeFast(forearm, hand);
    return isSame || (out > 0 && out < 1)
        ? pair(
            isSame ? MountReason.SAME_PLACE : MountReason.EXCHANGED,
            BodyPoint.LEAD_FOREARM,
            BodyPoint.LEAD_HAND)
        : Map.of();
  }

  /**
   * The hand turns faster than the forearm before impact and about a nearer point: the product of
   * both ratios is 1.4 to 4.8, the inverse of it where they are exchanged, and 1 on one bone.
   */
  private static double furtherOut(List<StrokeSeen> forearm, List<StrokeSeen> hand) {
    double reach = middle(forearm, StrokeSeen::reachM) / middle(hand, StrokeSeen::reachM);
    return reach * faster(forearm, hand);
  }

  /** Whatever they turn about, units on one bone turn alike; skin rings by less. */
  private static boolean isAlikeFast(List<StrokeSeen> forearm, List<StrokeSeen> hand) {
    double faster = faster(forearm, hand);
    return faster > 1 / ALIKE_FAST && faster < ALIKE_FAST;
  }

  private static double faster(List<StrokeSeen> forearm, List<StrokeSeen> hand) {
    return middle(hand, StrokeSeen::fastestRadPerS) / middle(forearm, StrokeSeen::fastestRadPerS);
  }

  private static Map<BodyPoint, Reason> pair(MountReason what, BodyPoint one, BodyPoint other) {
    Reason why = Reason.of(what, one, other);
    Map<BodyPoint, Reason> out = new LinkedHashMap<>();
    out.put(one, why);
    out.put(other, why);
    return out;
  }

  private static double middle(List<StrokeSeen> its, ToDoubleFunction<StrokeSeen> of) {
    return Averages.median(its.stream().mapToDouble(of).toArray());
  }
}
