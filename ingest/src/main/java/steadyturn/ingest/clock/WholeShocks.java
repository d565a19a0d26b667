package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;
import steadyturn.ingest.shock.ShockFinder;

/**
 * The blows whose beginning was measured: one that began in a gap cannot tell a time, nor can what
 * it left ringing.
 */
final class WholeShocks {

  /** Before and after an onset nothing may be missing for so long, s. */
  private static final double BEFORE_S = 0.012;

  private static final double AFTER_S = 0.004;
  private static final double LONGER_THAN_USUAL = 1.5;

  /**
   * A single sample lost at a high rate costs less than the onset itself is unsure (our choice).
   */
  private static final double SHORT_S = 0.0025;

  /**
   * Within this of a shock, one of less than that part of its clarity is no blow of its own (our
   * choices): turf before the ball is a fifth of it.
   */
  private static final double RINGS_S = 0.06;

  private static final double RINGING_PART = 0.15;

  private WholeShocks() {}

  static List<Shock> find(UnitStream unit) {
    List<Shock> all = ShockFinder.find(unit);
    List<Shock> blows = new ArrayList<>();
    int from = 0;
    for (Shock shock : all) {
      while (all.get(from).timeS() < shock.timeS() - RINGS_S) {
        from++;
      }
      if (isWhole(unit, shock.timeS()) && !isRinging(shock, all.subList(from, all.size()))) {
        blows.add(shock);
      }
    }
    return blows;
  }

  private static boolean isRinging(Shock shock, List<Shock> from) {
    return from.stream()
        .takeWhile(s -> s.timeS() < shock.timeS() + RINGS_S)
        .anyMatch(s -> shock.clarity() < RINGING_PART * s.clarity());
  }

  private static boolean isWhole(UnitStream unit, double onsetS) {
    double longestS = Math.max(SHORT_S, LONGER_THAN_USUAL * unit.usualStepS());
    int from = Math.max(1, unit.indexAt(onsetS - BEFORE_S));
    for (int i = from; i < unit.size() && unit.timeS(i - 1) < onsetS + AFTER_S; i++) {
      if (unit.timeS(i) - unit.timeS(i - 1) > longestS || !unit.hasForce(i)) {
        return false;
      }
    }
    return true;
  }
}
