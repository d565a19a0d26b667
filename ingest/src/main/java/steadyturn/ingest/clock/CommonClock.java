package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.BlowDelay;
import steadyturn.ingest.shock.Shock;
import steadyturn.ingest.shock.ShockFinder;

/**
 * Aligns the clocks of a recording's units. The surest ties are used: each unit is tied to that one
 * already aligned with which it shares the sharpest events, so that forearm and hand, which feel
 * every impact sharply, are tied to each other and not both to the pelvis, which feels it dully.
 */
public final class CommonClock {

  /** Shocks reach the hand and the forearm as good as together (our choice). */
  private static final double ARM_DELAY_SD_S = 0.0003;

  /**
   * How often a pair of shocks is not the same blow, by chance: 4 of 700 simulated lessons of one
   * swing (seeds 1200001 on) tied the pelvis 7 to 9 ms late, more than the blow's delay explains;
   * players knock about more, so one in a hundred (our choice).
   */
  private static final double STRANGER = 0.01;

  /**
   * What the common movement of forearm and hand is worth at best (our choice; the wrist moves).
   */
  private static final double MOTION_FLOOR_SD_S = 0.004;

  private static final int ENOUGH_PAIRS = 3;

  /** Shocks that agree as well as this need no help from the common movement, s. */
  private static final double SURE_S = 0.0015;

  private CommonClock() {}

  /** Brings all units onto the clock of the first, which is the pelvis unit where there is one. */
  public static AlignedRecording align(Recording recording) {
    List<UnitStream> waiting = new ArrayList<>(recording.units());
    if (waiting.isEmpty()) {
      return new AlignedRecording(recording, Map.of(), List.of());
    }
    Map<BodyPoint, List<Shock>> shocks = new EnumMap<>(BodyPoint.class);
    shocks.putAll(
        waiting.parallelStream().collect(Collectors.toMap(UnitStream::point, ShockFinder::find)));
    Map<BodyPoint, ClockFit> fits = new EnumMap<>(BodyPoint.class);
    List<ClockLink> links = new ArrayList<>();
    Map<List<BodyPoint>, ClockFit> known = new HashMap<>();
    fits.put(waiting.remove(0).point(), ClockFit.reference());
    while (!waiting.isEmpty()) {
      ClockLink surest = surest(recording, waiting, fits, shocks, known);
      links.add(surest);
      fits.put(surest.unit(), surest.fit().then(fitOf(fits, surest.tiedTo())));
      waiting.removeIf(u -> u.point() == surest.unit());
    }
    return new AlignedRecording(moved(recording, fits), fits, links);
  }

  private static ClockLink surest(
      Recording recording,
      List<UnitStream> waiting,
      Map<BodyPoint, ClockFit> fits,
      Map<BodyPoint, List<Shock>> shocks,
      Map<List<BodyPoint>, ClockFit> known) {
    Optional<ClockLink> best = Optional.empty();
    double bestSdS = Double.POSITIVE_INFINITY;
    for (UnitStream unit : waiting) {
      for (UnitStream done : recording.units()) {
        if (!fits.containsKey(done.point())) {
          continue;
        }
        ClockFit fit =
            known.computeIfAbsent(
                List.of(unit.point(), done.point()), pair -> between(unit, done, shocks));
        double sdS = sdOverS(fit, unit);
        if (sdS < bestSdS) {
          bestSdS = sdS;
          best = Optional.of(new ClockLink(unit.point(), done.point(), fit));
        }
      }
    }
    return best.orElseThrow();
  }

  private static ClockFit fitOf(Map<BodyPoint, ClockFit> fits, BodyPoint point) {
    return fits.getOrDefault(point, ClockFit.reference());
  }

  /** The larger of the spreads at the stream's two ends, s. */
  private static double sdOverS(ClockFit fit, UnitStream unit) {
    if (unit.size() == 0) {
      return fit.sdS();
    }
    return Math.max(fit.sdAtS(unit.timeS(0)), fit.sdAtS(unit.timeS(unit.size() - 1)));
  }

  private static ClockFit between(
      UnitStream unit, UnitStream other, Map<BodyPoint, List<Shock>> shocks) {
    double sampleSdS = Math.hypot(unit.meanStepS(), other.meanStepS()) / Math.sqrt(12);
    double delayS = trunkDelayS(other.point()) - trunkDelayS(unit.point());
    List<TimePair> pairs =
        ShockMatch.of(
                shocks.getOrDefault(unit.point(), List.of()),
                shocks.getOrDefault(other.point(), List.of()),
                sampleSdS)
            .stream()
            .map(pair -> new TimePair(pair.timeS(), pair.laterS() - delayS, pair.sdS()))
            .toList();
    boolean withTrunk = unit.point().isTrunk() || other.point().isTrunk();
    ClockFit byShocks = byShocks(pairs, withTrunk, unit);
    if (withTrunk || byShocks.sdS() < SURE_S) {
      return byShocks;
    }
    List<TimePair> motion = MotionMatch.of(unit, other);
    if (motion.size() < ENOUGH_PAIRS) {
      return byShocks;
    }
    ClockFit byMotion = ClockLine.fit(motion, MOTION_FLOOR_SD_S);
    return byMotion.sdS() < byShocks.sdS() ? byMotion : byShocks;
  }

  private static ClockFit byShocks(List<TimePair> pairs, boolean withTrunk, UnitStream unit) {
    if (pairs.isEmpty()) {
      return ClockLine.prior(unit.size() == 0 ? 0 : unit.timeS(0));
    }
    double delaySdS = withTrunk ? BlowDelay.TRUNK_SD_S : ARM_DELAY_SD_S;
    double chance = Math.pow(STRANGER, pairs.size());
    return ClockLine.fit(pairs, Math.hypot(delaySdS, Math.sqrt(chance) * ClockLine.OFFSET_SD_S));
  }

  private static double trunkDelayS(BodyPoint point) {
    return point.isTrunk() ? BlowDelay.TRUNK_S : 0;
  }

  private static Recording moved(Recording recording, Map<BodyPoint, ClockFit> fits) {
    List<UnitStream> units =
        recording.units().stream().map(unit -> moved(unit, fitOf(fits, unit.point()))).toList();
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  private static UnitStream moved(UnitStream unit, ClockFit fit) {
    return unit.withTimes(Arrays.stream(unit.timeColumnS()).map(fit::toReferenceS).toArray());
  }
}
