package steadyturn.ingest.clock;

import java.util.List;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;
import steadyturn.ingest.shock.ShockFinder;

/** The shocks whose beginning was measured: one that began in a gap cannot tell a time. */
final class WholeShocks {

  /** Before and after an onset nothing may be missing for so long, s. */
  private static final double BEFORE_S = 0.012;

  private static final double AFTER_S = 0.004;
  private static final double LONGER_THAN_USUAL = 1.5;

  private WholeShocks() {}

  static List<Shock> find(UnitStream unit) {
    return ShockFinder.find(unit).stream().filter(s -> isWhole(unit, s.timeS())).toList();
  }

  private static boolean isWhole(UnitStream unit, double onsetS) {
    double longestS = LONGER_THAN_USUAL * unit.usualStepS();
    int from = Math.max(1, unit.indexAt(onsetS - BEFORE_S));
    for (int i = from; i < unit.size() && unit.timeS(i - 1) < onsetS + AFTER_S; i++) {
      if (unit.timeS(i) - unit.timeS(i - 1) > longestS || !unit.hasForce(i)) {
        return false;
      }
    }
    return true;
  }
}
